#include "store/catalogue_merge.hpp"

#include <algorithm>
#include <set>

#include "domain/movement_names.hpp"

namespace repwright::store {
namespace {

using domain::Movement;
using domain::MovementId;

bool lists(const std::vector<MovementId>& ids, const MovementId& id) {
  return std::ranges::find(ids, id) != ids.end();
}

/// `id` is in `ids` afterwards exactly if it `belongs`.
void follow(std::vector<MovementId>& ids, const MovementId& id, const std::vector<MovementId>& reverse,
            const MovementId& self) {
  const bool belongs = lists(reverse, self);
  if (belongs && !lists(ids, id)) ids.push_back(id);
  if (!belongs) std::erase(ids, id);
}

void yield_to(Movement& shipped, const Movement& own) {
  follow(shipped.harder, own.id, own.easier, shipped.id);
  follow(shipped.easier, own.id, own.harder, shipped.id);
  std::set<std::string> taken{domain::normal_name(own.name)};
  for (const std::string& alias : own.aliases) taken.insert(domain::normal_name(alias));
  std::erase_if(shipped.aliases,
                [&](const std::string& alias) { return taken.contains(domain::normal_name(alias)); });
}

template <class Row, class Key>
void put_on_top(std::vector<Placed<Row>>& shipped, std::vector<Placed<Row>> own, Key key) {
  std::set<std::string> taken;
  for (const Placed<Row>& row : own) taken.insert(key(row.row));
  std::erase_if(shipped, [&](const Placed<Row>& row) { return taken.contains(key(row.row)); });
  std::ranges::move(own, std::back_inserter(shipped));
}

void put_terms_on_top(std::vector<domain::Term>& shipped, std::vector<domain::Term> own) {
  for (domain::Term& term : own) {
    const auto at = std::ranges::find(shipped, term.id, &domain::Term::id);
    if (at == shipped.end())
      shipped.push_back(std::move(term));
    else
      *at = std::move(term);
  }
}

}  // namespace

CatalogueRows with_own(CatalogueRows shipped, CatalogueRows own) {
  std::set<MovementId> own_ids;
  for (const Placed<Movement>& row : own.movements) own_ids.insert(row.row.id);
  for (Placed<Movement>& row : shipped.movements)
    if (!own_ids.contains(row.row.id))
      for (const Placed<Movement>& mine : own.movements) yield_to(row.row, mine.row);
  const auto id_text = [](const auto& row) { return row.id.text; };
  put_on_top(shipped.movements, std::move(own.movements), id_text);
  put_on_top(shipped.equipment, std::move(own.equipment), id_text);
  put_on_top(shipped.limits, std::move(own.limits), id_text);
  put_on_top(shipped.drills, std::move(own.drills), [](const domain::Drill& drill) { return drill.id; });
  put_on_top(shipped.words, std::move(own.words), [](const Meanings& meanings) { return meanings.word; });
  put_terms_on_top(shipped.terms.categories, std::move(own.terms.categories));
  put_terms_on_top(shipped.terms.patterns, std::move(own.terms.patterns));
  put_terms_on_top(shipped.terms.muscles, std::move(own.terms.muscles));
  put_terms_on_top(shipped.terms.flags, std::move(own.terms.flags));
  return shipped;
}

}  // namespace repwright::store
