#pragma once

#include <filesystem>
#include <utility>

#include "app/keeper.hpp"

namespace repwright::cli {

/// Keeps changes in a gym folder, a file each; a reader never sees half a file.
class FolderKeeper final : public app::Keeper {
 public:
  explicit FolderKeeper(std::filesystem::path folder) : folder_(std::move(folder)) {}
  base::Result<void> keep_board(const std::string& id, const std::string& text) override;
  base::Result<void> keep_class(const domain::GymClass& gym_class) override;
  base::Result<void> keep_people(const std::vector<domain::Person>& people) override;
  base::Result<void> keep_hall(const domain::Hall& hall) override;
  base::Result<void> keep_house(const domain::House& house) override;

 private:
  std::filesystem::path folder_;
};

}  // namespace repwright::cli
