#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace repwright::cli {

/// A place taken out for the day: `--out pull-up-bar=2`.
struct PlaceOut {
  std::string place;
  int count = 0;
};

struct ReadOptions {
  std::string board;  // a file, or "-" for the standard input
  std::optional<std::string> house;
  std::optional<std::string> gym;  // a gym folder, for its house and its own movements
  bool json = false;
};

struct ClassOptions {
  std::string board;
  std::optional<std::string> people, hall, house, gym_class, gym;
  std::optional<int> heads;
  std::vector<PlaceOut> out;
  bool indoors = false;
  int runs = 200;
  std::uint64_t seed = 1;
  int threads = 0;                      // 0: as many as the machine has
  std::optional<int> words_per_minute;  // of the coach's briefing
  bool as_written = false;
  bool json = false;
  bool draws = false;
  std::optional<std::string> why;  // a person, by name or id
};

struct WarmUpOptions {
  ClassOptions of_class;
  std::optional<double> minutes;  // nothing: what the board gives it
  std::vector<std::string> kit;   // ids of what is out though the board does not use it
};

struct AwayOptions {
  ClassOptions of_class;
  std::vector<std::string> kit;    // ids of what is there
  std::optional<std::string> who;  // name or id
  std::optional<double> minutes;   // at most
  double room = 6;                 // square metres
  bool quiet = false;
  bool outside = false;
};

struct PairsOptions {
  ClassOptions of_class;
  std::vector<std::pair<std::string, std::string>> apart;  // by name or id
};

struct ServeOptions {
  std::optional<std::string> gym;  // a gym folder or a database file; nothing: the user's own file
  std::uint16_t port = 8750;       // 0: any free one
  bool open = false;               // to the network
  bool new_owner_link = false;     // also where the gym has its owner
};

/// What the scores of a gym teach.
struct LearnOptions {
  std::string gym;  // a gym folder or a database file
  int runs = 100;   // of each session
  std::uint64_t seed = 1;
  int threads = 0;  // 0: as many as the machine has
  bool json = false;
  std::vector<std::string> next{};  // a person by name or id, and a board: which test would tell most
};

/// From one place where a gym is kept to another.
struct MoveOptions {
  std::string from, to;
  bool anew = false;  // write over what is there
};

/// One person of a gym, by name or id: to be written out, or forgotten.
struct PersonOptions {
  std::string person;
  std::string gym;                // a gym folder or a database file
  std::optional<std::string> to;  // a new folder; nothing: JSON on the standard output
  bool yes = false;               // do it, and not only say what would be done
};

struct DemoOptions {
  std::string folder;
  bool anew = false;  // write over what is there
};

}  // namespace repwright::cli
