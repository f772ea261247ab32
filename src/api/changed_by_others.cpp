#include "api/changed_by_others.hpp"

namespace repwright::api {
namespace {

/// What is not the same in both.
std::vector<Topic> topics_between(const app::OpenGym& before, const app::OpenGym& after) {
  std::vector<Topic> topics;
  const auto told = [&](Topic topic, bool same) {
    if (!same) topics.push_back(topic);
  };
  told(Topic::Boards, before.knowledge.boards == after.knowledge.boards);
  told(Topic::Classes, before.classes == after.classes);
  told(Topic::People, before.people == after.people);
  told(Topic::Hall, before.knowledge.hall == after.knowledge.hall);
  told(Topic::House, before.knowledge.house == after.knowledge.house);
  told(Topic::Scores, before.knowledge.scores == after.knowledge.scores);
  return topics;
}

}  // namespace

ByOthers changed_by_others(app::Desk& desk) {
  const auto before = desk.at_hand();
  const auto looked = desk.look_again();
  const auto after = desk.at_hand();
  return {.changed = before == after ? std::vector<Topic>{} : topics_between(before->gym(), after->gym()),
          .unread = looked ? std::nullopt : std::optional(looked.error())};
}

}  // namespace repwright::api
