#pragma once

#include <gtest/gtest.h>

#include <chrono>
#include <memory>
#include <stdexcept>
#include <string>

#include "stores.hpp"
#include "support/demo_folder.hpp"

namespace repwright::test {

inline const std::chrono::sys_days may_14{std::chrono::year{2027} / 5 / 14};
inline const domain::Stamp kim{"Kim", may_14 + std::chrono::hours(6)};
inline const domain::Stamp lou{"Lou", may_14 + std::chrono::hours(7)};

/// A store of each kind with the demo gym and two scores of `a17`.
class FilledStore : public testing::TestWithParam<StoreKind> {
 protected:
  void SetUp() override {
    store_ = make_store(GetParam(), scratch_.path());
    gym_ = demo_folder();
    gym_.scores = {score("22:10"), score("4+12")};
    const auto put = store_->put_gym(gym_, "# none of our own\n", kim);
    ASSERT_TRUE(put) << put.error().message;
  }

  static domain::ScoreEntry score(const std::string& text) {
    domain::ScoreEntry entry;
    entry.date = std::chrono::year{2027} / 4 / 23;
    entry.board_id = "fri-4";
    entry.person = {"a17"};
    entry.text = text;
    entry.value = domain::read_score(text);
    entry.effort = 7;
    entry.flag = domain::DayFlag::Hot;
    return entry;
  }

  bool in_a_folder() const { return GetParam() == StoreKind::Folder; }
  /// What another program that opens the same place sees; the same store if it lies in memory.
  store::Store& reopened() {
    if (GetParam() == StoreKind::Memory) return *store_;
    again_ = make_store(GetParam(), scratch_.path());
    return *again_;
  }
  store::KeptGym kept(store::Store& store) {
    auto gym = store.gym(shipped_catalogue());
    if (!gym) throw std::runtime_error(gym.error().message);
    return std::move(*gym);
  }
  store::KeptGym kept() { return kept(*store_); }
  template <class T>
  static base::ErrorCode code(const base::Result<T>& result) {
    if (result) throw std::runtime_error("it succeeded");
    return result.error().code;
  }

  Scratch scratch_;
  store::GymFolder gym_;
  std::unique_ptr<store::Store> store_, again_;
};

inline const auto every_store = testing::Values(StoreKind::Memory, StoreKind::Folder, StoreKind::Database);

inline std::string name_of_store(const testing::TestParamInfo<StoreKind>& kind) {
  switch (kind.param) {
    case StoreKind::Memory:
      return "Memory";
    case StoreKind::Folder:
      return "Folder";
    default:
      return "Database";
  }
}

}  // namespace repwright::test
