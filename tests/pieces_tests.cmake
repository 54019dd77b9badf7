# Tests of whole pieces: read, assessed, written as JSON, through the library as others link it.
foreach(name pieces_test properties_test memory_test)
  add_executable(${name} ${CMAKE_CURRENT_SOURCE_DIR}/${name}.c)
  target_link_libraries(${name} PRIVATE libtiptoe PkgConfig::CMOCKA PkgConfig::CJSON m)
  target_include_directories(${name} PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
  target_compile_definitions(${name} PRIVATE TT_ROOT="${CMAKE_SOURCE_DIR}")
  add_test(NAME ${name} COMMAND ${name})
endforeach()
