# Run by the test layer.<name>; see layer.cmake. A net, not a proof: it reads direct includes and known names.
cmake_minimum_required(VERSION 3.25)
string(REPLACE "," ";" allowed "${ALLOWED}")
string(REPLACE "," ";" libraries "${LIBRARIES}")
list(APPEND allowed "${LAYER}")

# The libraries that are kept in the layers which own them: the folder of the include, the target that allows it.
# tl::expected and fmt are open to all; fmt still has to be linked.
set(owned "nlohmann=nlohmann_json::nlohmann_json" "toml\\+\\+=tomlplusplus::tomlplusplus" "CLI=CLI11::CLI11"
  "boost=Boost::headers" "openssl=OpenSSL::SSL" "coin=cbc")

set(outside
  # headers
  "#include <(fstream|filesystem|iostream|thread|mutex|shared_mutex|condition_variable|future|semaphore|latch"
  "|barrier|random|ctime|unistd.h|sys/[a-z]+.h)>"
  # names
  "|system_clock|steady_clock|high_resolution_clock|random_device|mt19937|thread_local|std::thread|std::jthread"
  "|getenv *\\(|[^_a-z:]rand *\\(|std::rand *\\(|std::time *\\(|fopen *\\(|[^_a-z]printf *\\(|fmt::print *\\(")
list(JOIN outside "" outside)

set(bad "")
file(GLOB_RECURSE files "${ROOT}/${LAYER}/*.hpp" "${ROOT}/${LAYER}/*.cpp")
foreach(file IN LISTS files)
  # A CMake list joins what stands between brackets and splits at semicolons: neither may reach it.
  file(READ "${file}" text)
  string(REGEX REPLACE "[][;\\\\]" " " text "${text}")
  string(REPLACE "\n" ";" lines "${text}")
  set(number 0)
  foreach(line IN LISTS lines)
    math(EXPR number "${number} + 1")
    if(line MATCHES "^ *# *include \"([a-z_]+)/")
      if(NOT CMAKE_MATCH_1 IN_LIST allowed)
        string(APPEND bad "${file}:${number}: ${LAYER} may not include ${CMAKE_MATCH_1} (allowed: ${ALLOWED})\n")
      endif()
    elseif(line MATCHES "^ *# *include \"")
      string(APPEND bad "${file}:${number}: write the layer's folder in the include\n")
    endif()
    foreach(pair IN LISTS owned)
      string(REGEX MATCH "^([^=]+)=(.*)$" _ "${pair}")
      set(target "${CMAKE_MATCH_2}")
      if(line MATCHES "^ *# *include <${CMAKE_MATCH_1}/" AND NOT target IN_LIST libraries)
        string(APPEND bad "${file}:${number}: ${LAYER} does not own ${target}\n")
      endif()
    endforeach()
    string(REGEX REPLACE "//.*$" "" code " ${line}")
    if(PURE AND code MATCHES "${outside}")
      string(APPEND bad "${file}:${number}: pure layer ${LAYER} reaches outside: ${line}\n")
    endif()
  endforeach()
endforeach()
if(bad)
  message(FATAL_ERROR "${bad}")
endif()
