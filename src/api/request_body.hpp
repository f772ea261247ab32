#pragma once

#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "api/fault.hpp"

namespace repwright::api {

// Bytes of what people are asked for in several places.
inline constexpr std::size_t longest_name = 100;  // an id as well
inline constexpr std::size_t longest_secret = 200;

/// The JSON object of a request. Every getter gives a usable value; what is wrong with the fields, or a field
/// that nobody asked for, is said by `fault`, the first one by name.
class RequestBody {
 public:
  /// Any bytes are fine.
  explicit RequestBody(std::string_view bytes);

  bool has(const std::string& field);
  /// A list of texts of at most `most` bytes each; empty if it is not there.
  std::vector<std::string> texts(const std::string& field, std::size_t most);
  /// At most `most` bytes of UTF-8.
  std::optional<std::string> text(const std::string& field, std::size_t most);
  /// As `text`, but it must be there and not empty.
  std::string needed_text(const std::string& field, std::size_t most);
  std::optional<int> whole(const std::string& field, int min, int max);
  std::optional<double> number(const std::string& field, double min, double max);
  /// False if it is not there.
  bool flag(const std::string& field);
  /// An object of whole numbers, such as `{"rower": 1}`; empty if it is not there.
  std::map<std::string, int> counts(const std::string& field, int min, int max);

  /// An object as JSON text; it must be there.
  std::string object(const std::string& field);
  /// Rows of cells, `[{"name": "Jo", "sex": "f"}, ...]`, as CSV with the columns in the order in which they
  /// come first; cells are texts. It must be there.
  std::string table(const std::string& field);

  /// To be asked when every field was read.
  std::optional<Fault> fault() const;

 private:
  const nlohmann::ordered_json* find(const std::string& field);
  void wrong(const std::string& field, std::string text);

  nlohmann::ordered_json json_ = nlohmann::ordered_json::object();
  std::set<std::string> asked_;
  std::optional<Fault> fault_;
};

}  // namespace repwright::api
