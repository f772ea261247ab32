#pragma once

#include <string>
#include <vector>

#include "app/rehearse_class.hpp"
#include "base/result.hpp"
#include "cli/options.hpp"
#include "domain/gym_class.hpp"
#include "domain/people.hpp"

/// What the commands read before they compute.
namespace repwright::cli {

/// The board's text and what it is called in messages.
struct BoardText {
  std::string name;
  std::string text;
};
base::Result<BoardText> load_board(const std::string& path);

struct ReadInputs {
  BoardText board;
  domain::Catalogue catalogue;
  domain::House house;
};
base::Result<ReadInputs> load_reading(const ReadOptions& options);

struct ClassInputs {
  BoardText board;
  app::GymKnowledge gym;
  std::vector<domain::Person> people;
  domain::GymClass gym_class;
  std::vector<std::string> notes;  // what the files hold and the program leaves out
};
base::Result<ClassInputs> load_class(const ClassOptions& options);

}  // namespace repwright::cli
