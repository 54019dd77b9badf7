# Tests of whole pieces: read, assessed, written as JSON, through the library as others link it.
foreach(name pieces_test properties_test memory_test)
  add_executable(${name} ${CMAKE_CURRENT_SOURCE_DIR}/${name}.c)
  target_link_libraries(${name} PRIVATE libtiptoe PkgConfig::CMOCKA PkgConfig::CJSON m)
  target_include_directories(${name} PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
  target_compile_definitions(${name} PRIVATE TT_ROOT="${CMAKE_SOURCE_DIR}")
  add_test(NAME ${name} COMMAND ${name})
endforeach()

# The whole command line while memory is refused and streams fail.
add_executable(refused_test ${CMAKE_CURRENT_SOURCE_DIR}/refused_test.c)
target_link_libraries(refused_test PRIVATE tt_cli PkgConfig::CMOCKA PkgConfig::CJSON m)
target_include_directories(refused_test PRIVATE ${CMAKE_CURRENT_SOURCE_DIR} ${CMAKE_SOURCE_DIR}/src)
target_compile_definitions(refused_test PRIVATE TT_ROOT="${CMAKE_SOURCE_DIR}")
target_link_options(refused_test PRIVATE -Wl,--wrap=malloc,--wrap=calloc,--wrap=realloc,--wrap=free)
add_test(NAME refused_test COMMAND refused_test)
