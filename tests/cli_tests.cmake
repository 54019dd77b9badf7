# Of the command line: its cases, and the manual page against the table of options.
if(TARGET tiptoe)
  add_test(NAME cli_cases COMMAND sh ${CMAKE_CURRENT_SOURCE_DIR}/cli/run $<TARGET_FILE:tiptoe>)
  add_test(NAME cli_manual COMMAND ${CMAKE_COMMAND} -DTIPTOE=$<TARGET_FILE:tiptoe>
    -DPAGE=${CMAKE_SOURCE_DIR}/docs/tiptoe.1.scd -P ${CMAKE_CURRENT_SOURCE_DIR}/meta/manual.cmake)
  find_program(MANDOC mandoc)
  if(TARGET manual AND MANDOC)
    add_test(NAME cli_manual_lint COMMAND ${MANDOC} -T lint -W error ${CMAKE_BINARY_DIR}/tiptoe.1)
  endif()
endif()
