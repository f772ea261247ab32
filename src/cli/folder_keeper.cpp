#include "cli/folder_keeper.hpp"

#include "store/class_json.hpp"
#include "store/hall_json.hpp"
#include "store/house_json.hpp"
#include "store/people_csv.hpp"
#include "store/read_file.hpp"

namespace repwright::cli {

base::Result<void> FolderKeeper::keep_board(const std::string& id, const std::string& text) {
  return store::write_file(folder_ / "boards" / (id + ".txt"), text);
}

base::Result<void> FolderKeeper::keep_class(const domain::GymClass& gym_class) {
  return store::write_file(folder_ / "classes" / (gym_class.id + ".json"), store::write_class(gym_class));
}

base::Result<void> FolderKeeper::keep_people(const std::vector<domain::Person>& people) {
  return store::write_file(folder_ / "people.csv", store::write_people(people));
}

base::Result<void> FolderKeeper::keep_hall(const domain::Hall& hall) {
  return store::write_file(folder_ / "hall.json", store::write_hall(hall));
}

base::Result<void> FolderKeeper::keep_house(const domain::House& house) {
  return store::write_file(folder_ / "house.json", store::write_house(house));
}

}  // namespace repwright::cli
