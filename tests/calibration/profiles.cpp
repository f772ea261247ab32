#include "calibration/profiles.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <limits>
#include <map>
#include <string>

#include "store/csv.hpp"
#include "store/read_file.hpp"

namespace repwright::calibration {

namespace {

using Cells = std::map<std::string, std::string>;

/// The number of that cell; none if it is empty, below zero if it is no number.
double number(const Cells& cells, const std::string& column) {
  const std::string& text = cells.at(column);
  if (text.empty()) return std::numeric_limits<double>::quiet_NaN();
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  return error == std::errc{} && end == text.data() + text.size() ? value : -1;
}

std::optional<double> years_of(const std::string& band) {
  static const std::map<std::string, double> middles{{"Less than 6 months", .25},
                                                     {"6-12 months", .75},
                                                     {"1-2 years", 1.5},
                                                     {"2-4 years", 3},
                                                     {"4+ years", 6}};
  const auto found = middles.find(band);
  return found != middles.end() ? std::optional(found->second) : std::nullopt;
}

constexpr std::array numbers{"id",
                             "age_band_mid_y",
                             "height_cm",
                             "mass_kg",
                             "run_400m_s",
                             "run_5km_s",
                             "max_pullups_any_style",
                             "back_squat_1rm_kg",
                             "deadlift_1rm_kg",
                             "clean_jerk_1rm_kg",
                             "snatch_1rm_kg",
                             "piece1_s",
                             "piece2_s",
                             "piece3_s",
                             "piece4_s",
                             "piece5_reps"};

// The snatch is left out: the catalogue has no barbell snatch that it could be a mark of.
std::vector<domain::Mark> marks_of(const Cells& cells) {
  const auto run = [&](double metres, const char* column) {
    return domain::TimedDistance{{"run"}, metres * base::metre, number(cells, column) * base::second};
  };
  const auto lift = [&](const char* movement, const char* column) {
    return domain::BestLoad{{movement}, number(cells, column) * base::kilogram};
  };
  std::vector<domain::Mark> out{
      run(400, "run_400m_s"), run(5000, "run_5km_s"), lift("bb-back-squat", "back_squat_1rm_kg"),
      lift("bb-deadlift", "deadlift_1rm_kg"), lift("bb-clean-and-jerk", "clean_jerk_1rm_kg")};
  // Who scored pieces of 36 and 45 pull-ups has some: a zero is a field that was not filled in.
  if (const double reps = number(cells, "max_pullups_any_style"); reps > 0)
    out.emplace_back(domain::BestSet{{"pull-up"}, reps, true});
  return out;
}

Profile profile_of(const Cells& cells) {
  Profile out;
  out.id = static_cast<int>(number(cells, "id"));
  out.person.sex = cells.at("sex") == "F" ? domain::Sex::Female : domain::Sex::Male;
  out.person.age = number(cells, "age_band_mid_y");
  out.person.height = number(cells, "height_cm") / 100 * base::metre;
  out.person.mass = number(cells, "mass_kg") * base::kilogram;
  out.person.training_years = years_of(cells.at("years_training_band"));
  out.person.marks = marks_of(cells);
  out.score = {number(cells, "piece1_s"), number(cells, "piece2_s"), number(cells, "piece3_s"),
               number(cells, "piece4_s"), number(cells, "piece5_reps")};
  return out;
}

}  // namespace

base::Result<std::vector<Profile>> load_profiles(const std::filesystem::path& file) {
  const base::Result<std::string> bytes = store::read_file(file);
  if (!bytes) return tl::unexpected(bytes.error());
  store::Problems problems;
  const std::optional<store::CsvTable> table = store::read_csv(*bytes, file.filename().string(), problems);
  if (!table || !problems.empty()) return tl::unexpected(problems.error());
  std::vector<Profile> out;
  for (const store::CsvRow& row : table->rows) {
    Cells cells;
    for (std::size_t c = 0; c < table->header.size(); ++c) cells[table->header[c]] = row.cells[c];
    for (const char* column : {"sex", "years_training_band"})
      if (!cells.contains(column))
        return base::failure(base::ErrorCode::Invalid, fmt::format("has no column {}", column));
    for (const char* column : numbers)
      if (!cells.contains(column) || number(cells, column) < 0)
        return base::failure(base::ErrorCode::Invalid,
                             fmt::format("line {}: no number in column {}", row.line, column));
    out.push_back(profile_of(cells));
  }
  return out;
}

}  // namespace repwright::calibration
