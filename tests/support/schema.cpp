#include "support/schema.hpp"

#include <sys/wait.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "support/source_dir.hpp"

namespace repwright::test {

Verdict validate(const std::string& schema, const nlohmann::json& documents) {
  std::string folder = (std::filesystem::temp_directory_path() / "repwright-schema-XXXXXX").string();
  if (mkdtemp(folder.data()) == nullptr) return {1, "no temporary folder"};
  const std::string file = folder + "/documents.json";
  std::ofstream(file) << documents.dump();
  const std::string root = source_dir().string();
  const std::string command = "/usr/bin/python3 '" + root + "/tests/support/validate_json.py' '" + root +
                              "/docs/" + schema + "' '" + file + "' 2>&1";
  Verdict verdict;
  if (FILE* pipe = popen(command.c_str(), "r"); pipe != nullptr) {
    std::array<char, 4096> part{};
    while (const std::size_t got = std::fread(part.data(), 1, part.size(), pipe))
      verdict.said.append(part.data(), got);
    verdict.exit_code = WEXITSTATUS(pclose(pipe));
  } else {
    verdict = {1, "no shell"};
  }
  std::error_code ignored;
  std::filesystem::remove_all(folder, ignored);
  return verdict;
}

}  // namespace repwright::test
