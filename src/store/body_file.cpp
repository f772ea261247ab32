#include "store/body_file.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>

#include "store/body_keys.hpp"
#include "store/read_file.hpp"
#include "store/toml_table.hpp"

namespace repwright::store {
namespace {

using domain::BodyConstants;
using domain::Lift;
using domain::MovementCost;
using domain::MuscleGroup;

constexpr int body_version = 1;
using PerGroup = std::array<double, domain::muscle_group_count>;

void read_groups(TableReader& in, std::string_view key, PerGroup& to, Bounds bounds) {
  auto table = in.optional_table(key);
  if (!table) return;
  for (std::size_t g = 0; g < to.size(); ++g)
    if (const auto value = table->optional_number(group_names.at(g), bounds)) to.at(g) = *value;
  table->finish();
}

template <class Keys, class Owner>
void read_named(TableReader& in, const Keys& keys, Owner& to) {
  for (const auto& named : keys)
    if (const auto value = in.optional_number(named.key, named.bounds)) to.*named.member = *value;
}

void read_model(TableReader& in, BodyConstants& to) {
  read_named(in, model_keys, to);
  for (const GroupNamed& group : group_keys) read_groups(in, group.key, to.*group.member, group.bounds);
  in.finish();
}

MuscleGroup group_of(TableReader& in) {
  const std::string name = in.choice("group", {"push", "pull", "legs", "core", "grip"});
  for (std::size_t g = 0; g < group_names.size(); ++g)
    if (group_names.at(g) == name) return static_cast<MuscleGroup>(g);
  return MuscleGroup::Legs;
}

std::optional<Lift> lift_of(TableReader& in, const std::string& name) {
  constexpr std::array<std::string_view, domain::lift_count> lifts{"squat", "hinge", "press", "pull",
                                                                   "clean"};
  for (std::size_t l = 0; l < lifts.size(); ++l)
    if (lifts.at(l) == name) return static_cast<Lift>(l);
  if (!name.empty())
    in.note("strength", fmt::format("is '{}', not squat, hinge, press, pull or clean", name));
  return std::nullopt;
}

MovementCost cost_row(TableReader& in) {
  MovementCost row;
  row.group = group_of(in);
  read_groups(in, "weight", row.weight, {0, 2});
  row.weight.at(static_cast<std::size_t>(row.group)) = 1;
  row.cost = in.number("cost", {0, 60});
  row.mode = in.number("mode", {0.3, 1});
  row.share = in.optional_number("share", {0.05, 2});
  row.ratio = in.optional_number("ratio", {0.01, 100});
  row.strength = lift_of(in, in.optional_text("strength"));
  if (const auto of = in.optional_number("of", {0.02, 5})) {
    row.of = *of;
    if (!row.strength) in.note("of", "has no strength that it is a share of");
  }
  row.drag = in.optional_number("drag", {0.01, 50});
  row.source = in.text("source");
  if (row.share && row.ratio) in.note("ratio", "stands beside a share: one of the two gives the largest set");
  in.finish();
  return row;
}

void read_movements(const toml::table& table, TableReader& root, const RowPlace& file,
                    const domain::Catalogue& catalogue, std::pair<BodyConstants&, Problems&> to) {
  root.know("movement");
  const toml::node* node = table.get("movement");
  const toml::array* rows = node ? node->as_array() : nullptr;
  if (rows == nullptr) return root.note("movement", "is not a list of rows, write [[movement]] above each");
  for (const toml::node& element : *rows) {
    const toml::table* row = element.as_table();
    if (row == nullptr) {
      root.note("movement", "has an element that is no row, write [[movement]] above each");
      continue;
    }
    RowPlace place{file.file, line_of(element), (*row)["id"].value_or(std::string()), {}};
    TableReader in(*row, place, to.second);
    const domain::MovementId id{in.text("id")};
    if (!id.empty() && catalogue.find(id) == nullptr) in.note("id", "is no movement of the catalogue");
    if (!to.first.movements.emplace(id, cost_row(in)).second) in.note("id", "has a row already");
  }
}

}  // namespace

base::Result<BodyConstants> read_body_constants(std::string_view bytes, const std::string& file,
                                                const domain::Catalogue& catalogue) {
  BodyConstants constants;
  Problems problems;
  try {
    const toml::table table = toml::parse(bytes);
    RowPlace place{file, 0, "", {}};
    TableReader root(table, place, problems);
    if (const int version = root.whole_number("version", {0, 1000}); version != body_version)
      root.note("version", fmt::format("is {}, this program reads {}", version, body_version));
    if (auto model = root.optional_table("model")) read_model(*model, constants);
    if (auto prior = root.optional_table("prior")) {
      read_named(*prior, prior_keys, constants.prior);
      prior->finish();
    }
    if (auto marks = root.optional_table("marks")) {
      read_named(*marks, mark_keys, constants.marks);
      marks->finish();
    }
    read_movements(table, root, place, catalogue, {constants, problems});
    root.finish();
  } catch (const toml::parse_error& error) {
    const auto at = error.source().begin;
    problems.add({file, static_cast<int>(at.line), "", fmt::format("column {}", at.column),
                  fmt::format("not readable as TOML: {}", error.description())});
  }
  if (!problems.empty()) return tl::unexpected(problems.error());
  return constants;
}

base::Result<BodyConstants> load_body_constants(const std::filesystem::path& file,
                                                const domain::Catalogue& catalogue) {
  const base::Result<std::string> bytes = read_file(file);
  if (!bytes) return tl::unexpected(bytes.error());
  return read_body_constants(*bytes, file.filename().string(), catalogue);
}

}  // namespace repwright::store
