# Every library of the program, once. The packages that bring them are listed in tools/packages.txt,
# the reasons in docs/decisions/dependencies.md.
find_package(Threads REQUIRED)
find_package(tl-expected 1.0 REQUIRED)
find_package(fmt 9 REQUIRED)
find_package(nlohmann_json 3.11 REQUIRED)
find_package(CLI11 2.1 REQUIRED)
find_package(tomlplusplus 3.3 REQUIRED)
find_library(UTF8PROC_LIBRARY utf8proc REQUIRED)
find_path(UTF8PROC_INCLUDE utf8proc.h REQUIRED)
add_library(utf8proc UNKNOWN IMPORTED GLOBAL)
set_target_properties(utf8proc PROPERTIES IMPORTED_LOCATION "${UTF8PROC_LIBRARY}"
  INTERFACE_INCLUDE_DIRECTORIES "${UTF8PROC_INCLUDE}")
if(REPWRIGHT_TESTS)
  find_package(GTest 1.12 REQUIRED)
  find_package(rapidcheck REQUIRED)
  find_package(benchmark 1.7 REQUIRED)
endif()
