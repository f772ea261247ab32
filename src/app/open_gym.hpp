#pragma once

#include <map>
#include <string>
#include <vector>

#include "app/rehearse_class.hpp"
#include "domain/gym_class.hpp"
#include "domain/kept.hpp"
#include "domain/people.hpp"
#include "store/store.hpp"

/// A gym as it lies open before the coach: a value, read once and shared by everything that looks at it.
namespace repwright::app {

struct OpenGym {
  GymKnowledge knowledge;
  std::vector<domain::Person> people;
  std::map<std::string, std::string> boards;        // text by id
  std::map<std::string, domain::GymClass> classes;  // by id
  domain::GymVersions versions;                     // what of it is kept

  /// Puts up that text, new or in place of what was there; what is told of past scores knows it, too.
  void chalk(const std::string& board_id, const std::string& text);
};

/// The gym as it was kept, with what the program knows.
OpenGym open_gym(store::KeptGym kept, domain::Catalogue catalogue, body::Constants constants);

}  // namespace repwright::app
