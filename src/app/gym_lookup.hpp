#pragma once

#include <string>

#include "app/open_gym.hpp"

/// What of a gym a question is about, by its name.
namespace repwright::app {

/// The class of that id. Fails with NotFound.
base::Result<const domain::GymClass*> class_called(const OpenGym& gym, const std::string& id);

/// The board of a class, as chalked. Fails with NotFound.
base::Result<const std::string*> chalk_of(const OpenGym& gym, const domain::GymClass& gym_class);

}  // namespace repwright::app
