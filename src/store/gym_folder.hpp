#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/result.hpp"
#include "domain/catalogue.hpp"
#include "domain/gym_class.hpp"
#include "domain/hall.hpp"
#include "domain/house.hpp"
#include "domain/people.hpp"
#include "domain/score.hpp"

namespace repwright::store {

/// What a gym keeps in a folder (docs/guide/gym-folder.md).
struct GymFolder {
  std::vector<domain::Person> people;
  domain::Hall hall;
  domain::House house;
  std::map<std::string, std::string> boards;        // text by id
  std::map<std::string, domain::GymClass> classes;  // by id
  std::vector<domain::ScoreEntry> scores;
  std::vector<std::string> notes;  // what was left out on reading
};

/// The gym's own movements file in that folder, if there is one: to be loaded with the catalogue first.
std::optional<std::filesystem::path> gyms_own_movements(const std::filesystem::path& folder);

/// Reads people.csv and, where they are, hall.json, house.json, boards/*.txt, classes/*.json and scores.csv.
/// Fails with NotFound if the folder or people.csv is not there, with Invalid naming everything that is wrong
/// in all files, also a class with people, boards, routes or places that the folder does not have.
base::Result<GymFolder> read_gym(const std::filesystem::path& folder, const domain::Catalogue& catalogue);

/// Writes every file so that `read_gym` reads the same; files of other ids stay. People come
/// last: without them a folder that was half written is no gym. Fails with Invalid if an id
/// cannot be a file name, Unavailable if the folder cannot be written.
base::Result<void> write_gym(const std::filesystem::path& folder, const GymFolder& gym);

/// Fails with Invalid unless the id can be the name of a file on every system: letters, digits, dot, hyphen,
/// underscore, and no dot in front.
base::Result<void> check_id(const std::string& id);
/// The same of every board and class.
base::Result<void> check_ids(const GymFolder& gym);

/// What a class names that is not there, one sentence each: people, routes, places.
std::vector<std::string> check_class(const domain::GymClass& gym_class,
                                     const std::vector<domain::Person>& people, const domain::Hall& hall);

}  // namespace repwright::store
