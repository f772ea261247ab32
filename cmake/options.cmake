# One place for every compiler flag; the presets choose among these and nothing else sets any.
set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)
if(NOT CMAKE_BUILD_TYPE)
  set(CMAKE_BUILD_TYPE Release CACHE STRING "" FORCE)
endif()

option(REPWRIGHT_TESTS "build the tests" ON)
option(REPWRIGHT_FUZZ "build the fuzz targets (needs clang)" OFF)
option(REPWRIGHT_WERROR "treat warnings as errors" OFF)
set(REPWRIGHT_SANITIZE "" CACHE STRING "address,undefined or thread")

# What one clone has compiled, the next finds again: paths count from the top of the checkout, and the compiler
# speaks one language everywhere.
find_program(REPWRIGHT_CCACHE ccache)
if(REPWRIGHT_CCACHE)
  set(CMAKE_CXX_COMPILER_LAUNCHER "${CMAKE_COMMAND}" -E env --unset=LC_ALL LANG=C.UTF-8
    "CCACHE_BASEDIR=${CMAKE_SOURCE_DIR}" CCACHE_NOHASHDIR=1 "${REPWRIGHT_CCACHE}")
endif()
find_program(REPWRIGHT_MOLD mold)
if(REPWRIGHT_MOLD)
  add_link_options(-fuse-ld=mold)
endif()

# Of the debugger's tables lines and frames are enough for a test that fails; the rest is a third of what a file with
# much JSON takes to compile.
set(CMAKE_CXX_FLAGS_RELWITHDEBINFO "-O2 -g1 -DNDEBUG")

# The same floats from every compiler and machine: no fused multiply-add behind our back.
add_compile_options(-ffp-contract=off)
if(REPWRIGHT_SANITIZE)
  add_compile_options(-fsanitize=${REPWRIGHT_SANITIZE} -fno-sanitize-recover=all -fno-omit-frame-pointer)
  add_link_options(-fsanitize=${REPWRIGHT_SANITIZE})
endif()
if(REPWRIGHT_FUZZ)
  add_compile_options(-fsanitize=fuzzer-no-link)
endif()

add_library(project_options INTERFACE)
target_include_directories(project_options INTERFACE "${CMAKE_SOURCE_DIR}/src")
# clang 19 reports the deprecated temporary buffer that the stable sorts of g++ 12's library still use inside.
target_compile_options(project_options INTERFACE
  $<$<CXX_COMPILER_ID:Clang>:-Wno-deprecated-declarations>
  -Wall -Wextra -Wshadow -Wconversion -Wsign-conversion -Wnon-virtual-dtor -Woverloaded-virtual
  $<$<BOOL:${REPWRIGHT_WERROR}>:-Werror>)
target_compile_definitions(project_options INTERFACE $<$<NOT:$<CONFIG:Release>>:_GLIBCXX_ASSERTIONS>)
