# Of the command line: its cases, the manual page against the table of options, the JSON result of
# the examples against its schema.
if(TARGET tiptoe)
  add_test(NAME cli_cases COMMAND sh ${CMAKE_CURRENT_SOURCE_DIR}/cli/run $<TARGET_FILE:tiptoe>)
  add_test(NAME cli_manual COMMAND ${CMAKE_COMMAND} -DTIPTOE=$<TARGET_FILE:tiptoe>
    -DPAGE=${CMAKE_SOURCE_DIR}/docs/tiptoe.1.scd -P ${CMAKE_CURRENT_SOURCE_DIR}/meta/manual.cmake)
  find_program(BASH bash)
  if(BASH)
    add_test(NAME cli_completions COMMAND ${BASH} ${CMAKE_CURRENT_SOURCE_DIR}/meta/completions.bash
      $<TARGET_FILE:tiptoe> ${CMAKE_BINARY_DIR}/completions)
  endif()
  find_program(MANDOC mandoc)
  if(TARGET manual AND MANDOC)
    add_test(NAME cli_manual_lint COMMAND ${MANDOC} -T lint -W error ${CMAKE_BINARY_DIR}/tiptoe.1)
  endif()
  find_package(Python3 COMPONENTS Interpreter)
  if(Python3_FOUND)
    execute_process(COMMAND ${Python3_EXECUTABLE} -c "import jsonschema"
      RESULT_VARIABLE no_jsonschema OUTPUT_QUIET ERROR_QUIET)
  endif()
  if(Python3_FOUND AND NOT no_jsonschema)
    file(GLOB pieces CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/examples/*.yaml
      ${CMAKE_CURRENT_SOURCE_DIR}/cli/data-in-json/piece.yaml ${CMAKE_CURRENT_SOURCE_DIR}/cli/text-on-stdout/piece.yaml)
    add_test(NAME cli_result_schema COMMAND ${Python3_EXECUTABLE}
      ${CMAKE_CURRENT_SOURCE_DIR}/meta/result_schema.py $<TARGET_FILE:tiptoe>
      ${CMAKE_SOURCE_DIR}/docs/result.schema.json ${pieces})
    add_test(NAME cli_weigh_schema COMMAND ${Python3_EXECUTABLE}
      ${CMAKE_CURRENT_SOURCE_DIR}/meta/weigh_schema.py $<TARGET_FILE:tiptoe>
      ${CMAKE_SOURCE_DIR}/docs/weigh.schema.json ${pieces} ${CMAKE_CURRENT_SOURCE_DIR}/pieces/works.yaml
      ${CMAKE_CURRENT_SOURCE_DIR}/pieces/works-us.yaml)
  else()
    message(STATUS "test cli_result_schema waits for python3 with jsonschema")
  endif()
  if(Python3_FOUND)
    add_test(NAME cli_manual_console COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/meta/console.py
      $<TARGET_FILE:tiptoe> ${CMAKE_SOURCE_DIR} ${CMAKE_SOURCE_DIR}/README.md ${CMAKE_SOURCE_DIR}/docs/tour.md
      ${CMAKE_SOURCE_DIR}/docs/commands.md ${CMAKE_SOURCE_DIR}/docs/results.md)
    execute_process(COMMAND ${Python3_EXECUTABLE} -c "import jsonschema, yaml"
      RESULT_VARIABLE no_yaml OUTPUT_QUIET ERROR_QUIET)
  endif()
  if(Python3_FOUND AND NOT no_yaml)
    add_test(NAME cli_piece_schema COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/meta/piece_schema.py
      $<TARGET_FILE:tiptoe> ${CMAKE_SOURCE_DIR}/docs/piece.schema.json ${CMAKE_SOURCE_DIR})
  else()
    message(STATUS "test cli_piece_schema waits for python3 with jsonschema and yaml")
  endif()
endif()
