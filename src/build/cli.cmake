# The manual page, made by scdoc where there is one.
find_program(SCDOC scdoc)
if(SCDOC)
  set(page ${CMAKE_BINARY_DIR}/tiptoe.1)
  set(page_source ${CMAKE_SOURCE_DIR}/docs/tiptoe.1.scd)
  add_custom_command(OUTPUT ${page}
    COMMAND ${CMAKE_COMMAND} -DSCDOC=${SCDOC} -DFROM=${page_source} -DTO=${page}
      -P ${CMAKE_SOURCE_DIR}/src/build/manual.cmake
    DEPENDS ${page_source} ${CMAKE_SOURCE_DIR}/src/build/manual.cmake VERBATIM)
  add_custom_target(manual ALL DEPENDS ${page})
endif()
