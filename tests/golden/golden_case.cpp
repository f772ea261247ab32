#include "golden_case.hpp"

#include <sys/wait.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>

#include "support/files.hpp"
#include "support/source_dir.hpp"

namespace repwright::test {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view mark = "--- ";
constexpr std::string_view prompt = "$ ";
constexpr std::string_view name_of_program = "repwright";

class Parser {
 public:
  GoldenCase parse(std::string_view text) {
    into_ = &golden_.about;
    while (!text.empty()) {
      const std::size_t end = std::min(text.find('\n'), text.size() - 1);
      ++number_;
      line(text.substr(0, end + 1));
      text.remove_prefix(end + 1);
    }
    return std::move(golden_);
  }

 private:
  void line(std::string_view text) {
    std::string_view words = text;
    if (words.ends_with('\n')) words.remove_suffix(1);
    if (words.starts_with(prompt)) {
      golden_.runs.push_back({.command = std::string(words.substr(prompt.size())), .out = "", .err = ""});
      if (!golden_.runs.back().command.starts_with(name_of_program)) fail("a command begins with repwright");
      into_ = nullptr;
    } else if (words.starts_with(mark)) {
      section(words.substr(mark.size()));
    } else if (into_ == nullptr) {
      fail("text outside of a section");
    } else {
      into_->append(text);
    }
  }

  void section(std::string_view words) {
    if (words.starts_with("file ")) {
      golden_.files.push_back({std::string(words.substr(5)), ""});
      into_ = &golden_.files.back().text;
      return;
    }
    if (golden_.runs.empty()) fail("a result without a command");
    GoldenRun& run = golden_.runs.back();
    if (words == "stdout") {
      into_ = &run.out;
    } else if (words == "stderr") {
      into_ = &run.err;
    } else if (words.starts_with("exit ")) {
      run.exit_code = std::stoi(std::string(words.substr(5)));
      into_ = nullptr;
    } else {
      fail("no such section");
    }
  }

  [[noreturn]] void fail(const char* why) const {
    throw std::runtime_error("line " + std::to_string(number_) + ": " + why);
  }

  GoldenCase golden_;
  std::string* into_ = nullptr;
  int number_ = 0;
};

/// A folder that is gone when the case is done.
class Folder {
 public:
  Folder() {
    std::string name = (fs::temp_directory_path() / "repwright-golden-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
    path_ = name;
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

}  // namespace

std::string case_path(const std::string& file) {
  return (source_dir() / "tests/golden" / file).string();
}

std::vector<std::string> case_files() {
  const fs::path folder = case_path("");
  std::vector<std::string> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (entry.path().extension() == ".case") files.push_back(fs::relative(entry.path(), folder).string());
  std::ranges::sort(files);
  return files;
}

GoldenCase read_case(const std::string& file) {
  return parse_case(text_of_file(case_path(file)));
}

GoldenCase parse_case(std::string_view text) {
  return Parser().parse(text);
}

std::string write_case(const GoldenCase& golden) {
  std::string text = golden.about;
  for (const GoldenFile& file : golden.files)
    text += std::string(mark) + "file " + file.name + "\n" + file.text;
  for (const GoldenRun& run : golden.runs) {
    text += std::string(prompt) + run.command + "\n";
    if (!run.out.empty()) text += std::string(mark) + "stdout\n" + run.out;
    if (!run.err.empty()) text += std::string(mark) + "stderr\n" + run.err;
    if (run.exit_code != 0) text += std::string(mark) + "exit " + std::to_string(run.exit_code) + "\n";
  }
  return text;
}

GoldenCase run_case(GoldenCase golden, const std::string& program) {
  const Folder folder;
  const fs::path work = folder.path() / "work";
  fs::create_directories(work);
  for (const GoldenFile& file : golden.files) {
    fs::create_directories((work / file.name).parent_path());
    std::ofstream(work / file.name, std::ios::binary) << file.text;
  }
  for (GoldenRun& run : golden.runs) {
    const std::string out = (folder.path() / "out").string();
    const std::string err = (folder.path() / "err").string();
    const std::string line = "cd '" + work.string() + "' && { '" + program + "'" +
                             run.command.substr(name_of_program.size()) + "; } </dev/null >'" + out +
                             "' 2>'" + err + "'";
    run.exit_code = WEXITSTATUS(std::system(line.c_str()));
    run.out = text_of_file(out);
    run.err = text_of_file(err);
  }
  return golden;
}

}  // namespace repwright::test
