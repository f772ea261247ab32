#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "domain/account.hpp"
#include "domain/gym_class.hpp"
#include "domain/kept.hpp"
#include "domain/people.hpp"
#include "store/store.hpp"

/// All that a gym keeps of one person, for that person.
namespace repwright::app {

/// A class that knows the person: `booked`, `walked_in`, or how late they came.
struct ClassOfPerson {
  std::string id;
  std::optional<std::chrono::year_month_day> date;
  bool booked = false;
  bool walked_in = false;
  std::optional<base::Duration> late;
};

struct PersonRecord {
  domain::Person person;
  std::vector<ClassOfPerson> classes;                  // by id
  std::vector<std::vector<domain::KeptScore>> scores;  // per line, all that it ever said, oldest first
  std::vector<domain::ClassEffort> efforts;            // by class
  std::vector<domain::KeptDoorLine> at_door;           // by class
  bool in_rankings = false;
  std::vector<domain::KeptNote> notes;    // also those that wore off and are still there
  std::vector<domain::Account> accounts;  // the person's own
  std::vector<domain::TrailLine> trail;   // what those accounts did, newest first
  std::vector<std::string> boards;        // whose texts have the name in them, by id
};

/// The person of that id, else the only one of that name. Fails with NotFound, and with Invalid for a name
/// that several have, saying their ids.
base::Result<domain::Person> person_named(const std::vector<domain::Person>& people, std::string_view name);

/// What of these a kind of store does not keep is empty. Fails as the store.
base::Result<PersonRecord> person_record(store::Store& store, const store::GymFolder& gym,
                                         const domain::Person& person);

/// The boards in whose text the name stands, or its first word, as words of their own.
std::vector<std::string> boards_naming(const store::GymFolder& gym, const std::string& name);

}  // namespace repwright::app
