#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "store/catalogue_file.hpp"

/// A catalogue of three movements that tests break one word at a time.
namespace repwright::test {

inline constexpr std::string_view terms_text = R"(version = 1
source = "common practice"
[category]
bodyweight = "Body weight"
[pattern]
push = "Push"
[muscle]
chest = "Chest"
[flag]
wrist = "Weight on a bent wrist"
floor = "Down to the floor"
[[equipment]]
id = "box"
name = "Box"
kind = "loose"
width_m = 0.8
people_per_unit = 1
[[limit]]
id = "wrist"
name = "Weight on a bent wrist hurts"
from_flags = ["wrist", "@impact-high"]
)";

/// A complete row; `lines` stand in for the defaults of the keys that they begin with.
inline std::string movement_text(const std::string& id, const std::vector<std::string>& lines = {}) {
  std::vector<std::string> all{"id = \"" + id + "\"",
                               "name = \"The " + id + "\"",
                               "aliases = []",
                               "category = \"bodyweight\"",
                               "patterns = [\"push\"]",
                               "muscles = { primary = [\"chest\"], secondary = [] }",
                               "equipment = []",
                               "space_m2 = 2.2",
                               "station = \"own\"",
                               "seconds_per_unit = { reps = { brisk = 1.3, sustained = 2.0 } }",
                               "default_unit = \"reps\"",
                               "break_s = 8",
                               "on_off_s = 3",
                               "impact = \"none\"",
                               "flags = []",
                               "easier = []",
                               "harder = []",
                               "home = []",
                               "standard = { start = \"Tall.\", finish = \"Tall again.\" }",
                               "faults = [{ fault = \"Slow\", cue = \"Quick.\" }]",
                               "cautions = [\"Warm up.\"]",
                               "eccentric_stress = \"low\"",
                               "pace_spread_cv = 0.2",
                               "avoid_with = []",
                               "swap_for = {}",
                               "kit_free = true"};
  std::string out = "[[movement]]\n";
  std::vector<std::string> extra = lines;
  for (std::string& line : all) {
    const std::string key = line.substr(0, line.find(' ') + 1);
    for (std::string& own : extra)
      if (own.starts_with(key)) {
        line = own;
        own.clear();
      }
    if (!line.ends_with("= -")) out += line + "\n";
  }
  for (const std::string& own : extra)
    if (!own.empty()) out += own + "\n";
  return out;
}

inline base::Result<domain::Catalogue> read_small(const std::string& movements,
                                                  const std::optional<std::string>& own = std::nullopt) {
  std::optional<store::CatalogueText> own_text;
  if (own) own_text = store::CatalogueText{"movements.toml", *own};
  return store::read_catalogue({{"terms.toml", std::string(terms_text)}, {"bodyweight.toml", movements}},
                               own_text);
}

/// What is wrong with it; empty if nothing is.
inline std::string complaint(const std::string& movements,
                             const std::optional<std::string>& own = std::nullopt) {
  const auto read = read_small(movements, own);
  return read ? std::string() : read.error().message;
}

}  // namespace repwright::test
