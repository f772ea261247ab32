#pragma once

#include <string>
#include <string_view>
#include <vector>

/// One golden case: files, commands, and what each of them is expected to print. The format: README.md here.
namespace repwright::test {

struct GoldenFile {
  std::string name;
  std::string text;
  bool operator==(const GoldenFile&) const = default;
};
struct GoldenRun {
  std::string command;  // a shell line that begins with `repwright`
  std::string out;
  std::string err;
  int exit_code = 0;
  bool operator==(const GoldenRun&) const = default;
};
struct GoldenCase {
  std::string about;
  std::vector<GoldenFile> files;
  std::vector<GoldenRun> runs;
  bool operator==(const GoldenCase&) const = default;
};

/// The cases of this folder, as paths from here, sorted; where one stands; what it holds.
std::vector<std::string> case_files();
std::string case_path(const std::string& file);
GoldenCase read_case(const std::string& file);

/// Throws std::runtime_error, naming the line, on what the format does not have.
GoldenCase parse_case(std::string_view text);
std::string write_case(const GoldenCase& golden);

/// The same case with what `program` prints now, run in a folder of its own that holds the case's files.
GoldenCase run_case(GoldenCase golden, const std::string& program);

}  // namespace repwright::test
