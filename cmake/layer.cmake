# layer(<name> [PURE] [DEPENDS <layers>] [LINK <libraries>])
#
# Makes the static library `<name>` from src/<name>/*.cpp and the test `layer.<name>`.
function(layer name)
  cmake_parse_arguments(ARG "PURE" "" "DEPENDS;LINK" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS "${CMAKE_SOURCE_DIR}/src/${name}/*.cpp")
  if(sources)
    add_library(${name} STATIC ${sources})
    target_link_libraries(${name} PRIVATE project_options PUBLIC ${ARG_DEPENDS} ${ARG_LINK})
    target_include_directories(${name} PUBLIC "${CMAKE_SOURCE_DIR}/src")
  else()
    add_library(${name} INTERFACE)
    target_link_libraries(${name} INTERFACE ${ARG_DEPENDS} ${ARG_LINK})
    target_include_directories(${name} INTERFACE "${CMAKE_SOURCE_DIR}/src")
  endif()
  layer_test(${name} ${ARGN})
endfunction()

# layer_test(<name> [PURE] [DEPENDS <layers>] [LINK <libraries>])
#
# Adds the test `layer.<name>`, which fails when a file of the layer includes a layer or a kept library that it
# does not name, or, if PURE, touches a clock, file, thread, environment or hidden random number.
function(layer_test name)
  cmake_parse_arguments(ARG "PURE" "" "DEPENDS;LINK" ${ARGN})
  list(JOIN ARG_DEPENDS "," allowed)
  list(JOIN ARG_LINK "," libraries)
  if(REPWRIGHT_TESTS)
    add_test(NAME layer.${name}
      COMMAND "${CMAKE_COMMAND}" -DLAYER=${name} -DALLOWED=${allowed} -DLIBRARIES=${libraries} -DPURE=${ARG_PURE}
              -DROOT=${CMAKE_SOURCE_DIR}/src -P "${CMAKE_SOURCE_DIR}/cmake/check_layer.cmake")
  endif()
endfunction()
