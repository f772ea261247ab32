#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "domain/catalogue.hpp"
#include "domain/movement_names.hpp"
#include "domain/people.hpp"

/// Marks as the head of a column ("run 400 m", "max push-up", "push-up in 2:00", "5rm deadlift (lb)") and as
/// cells below it ("1:32", "18", "75").
namespace repwright::store {

/// The catalogue with its names ready to be looked up.
struct NamedCatalogue {
  explicit NamedCatalogue(const domain::Catalogue& of) : catalogue(of), names(of) {}
  const domain::Catalogue& catalogue;
  domain::MovementNames names;
};

struct MarkColumn {
  domain::Mark mark;  // with nothing measured yet
  bool pounds = false;
  bool bare_seconds = false;  // "(s)": a number alone is seconds
};

/// A column, nothing if the header does not have the form of a mark, or why it has the form and is none.
tl::expected<std::optional<MarkColumn>, std::string> read_mark_header(std::string_view header,
                                                                      const NamedCatalogue& known);

/// The mark of a cell that is not empty, or what is wrong with it: form, or a value that nobody reaches.
tl::expected<domain::Mark, std::string> read_mark_cell(const MarkColumn& column, std::string_view cell,
                                                       const domain::Catalogue& catalogue);

/// The header that `read_mark_header` reads as this mark, and the cell.
std::string write_mark_header(const domain::Mark& mark);
std::string write_mark_cell(const domain::Mark& mark);

}  // namespace repwright::store
