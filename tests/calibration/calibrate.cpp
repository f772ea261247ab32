#include <cstdio>
#include <filesystem>

#include "calibration/agreement.hpp"
#include "store/body_file.hpp"
#include "store/catalogue_file.hpp"

/// calibrate DATA MARKS.csv: the table of errors of the shipped constants; DATA is the folder of body.toml.
int main(int count, char** words) {
  using namespace repwright;
  if (count != 3) return std::fputs("usage: calibrate DATA MARKS.csv\n", stderr), 2;
  const std::filesystem::path data = words[1];
  const auto fail = [](const base::Error& error) {
    return std::fprintf(stderr, "%s\n", error.message.c_str()), 1;
  };
  const auto catalogue = store::load_catalogue(data / "catalogue", std::nullopt);
  if (!catalogue) return fail(catalogue.error());
  const auto constants = store::load_body_constants(data / "body.toml", *catalogue);
  if (!constants) return fail(constants.error());
  const auto profiles = calibration::load_profiles(words[2]);
  if (!profiles) return fail(profiles.error());
  const auto said = calibration::forecasts(*profiles, *catalogue, *constants, 0);
  std::fputs(calibration::agreement_table(*profiles, said).c_str(), stdout);
  return 0;
}
