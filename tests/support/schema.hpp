#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

namespace repwright::test {

struct Verdict {
  int exit_code = 0;  // 0: valid; 77: the validator is not installed
  std::string said;
};

/// The verdict of a validator outside the project (python3-jsonschema, JSON Schema 2020-12) on an array of
/// documents. `schema` is a file of docs/.
Verdict validate(const std::string& schema, const nlohmann::json& documents);

}  // namespace repwright::test
