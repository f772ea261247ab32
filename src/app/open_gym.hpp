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
  std::map<std::string, domain::GymClass> classes;  // by id
  domain::GymVersions versions;                     // what of it is kept
};

/// The gym as it was kept, with what the program knows.
OpenGym open_gym(store::KeptGym kept, domain::Catalogue catalogue, body::Constants constants);

/// 'What if': what the coach changes for one look, nothing of it kept.
struct WhatIf {
  std::string class_id;  // empty: everybody comes, on no date
  std::optional<int> heads;
  std::map<std::string, int> out;  // places out today, by kind
  bool indoors = false;
  int runs = 200;
  std::uint64_t seed = 1;
  int threads = 0;  // 0: as many as the machine has
  std::stop_token stop;
  bool keep_draws = false;
};

/// The class as it would be under a 'what if'. Fails with NotFound for a class or a kind of place that is not
/// there.
base::Result<domain::GymClass> class_under(const OpenGym& gym, const WhatIf& what);

/// What to rehearse of such a class; it refers to all of its arguments but the last, and knows nothing of
/// what people did lately.
ClassRequest request_of(const OpenGym& gym, const board::Reading& reading, const domain::GymClass& gym_class,
                        const WhatIf& what);

}  // namespace repwright::app
