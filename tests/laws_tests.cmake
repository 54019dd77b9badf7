# Laws of the house (meta/), the reference page of the piece file, the installed library, memory.
add_test(NAME meta_lengths COMMAND sh ${CMAKE_CURRENT_SOURCE_DIR}/meta/lengths.sh ${CMAKE_SOURCE_DIR})
add_test(NAME meta_words COMMAND sh ${CMAKE_CURRENT_SOURCE_DIR}/meta/words.sh ${CMAKE_SOURCE_DIR})

include(CheckLanguage)
check_language(CXX)
if(NOT CMAKE_CXX_COMPILER)
  message(STATUS "test meta_headers compiles no header as C++: there is no compiler")
  set(CMAKE_CXX_COMPILER "")
endif()
add_test(NAME meta_headers COMMAND ${CMAKE_COMMAND} -DROOT=${CMAKE_SOURCE_DIR} -DBUILD=${CMAKE_BINARY_DIR}
  -DSCRATCH=${CMAKE_CURRENT_BINARY_DIR}/header.txt -DCC=${CMAKE_C_COMPILER} -DCXX=${CMAKE_CXX_COMPILER}
  -P ${CMAKE_CURRENT_SOURCE_DIR}/meta/headers.cmake)

if(TARGET tiptoe)
  add_executable(laws_test ${CMAKE_CURRENT_SOURCE_DIR}/laws_test.c)
  target_link_libraries(laws_test PRIVATE libtiptoe PkgConfig::CMOCKA PkgConfig::CJSON m)
  target_include_directories(laws_test PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
  target_compile_definitions(laws_test PRIVATE TT_ROOT="${CMAKE_SOURCE_DIR}" TT_PROGRAM="$<TARGET_FILE:tiptoe>"
    TT_SCRATCH="${CMAKE_CURRENT_BINARY_DIR}/laws_test.json")
  add_test(NAME laws_test COMMAND laws_test)

  # docs/piece-file.md, from the key table.
  set(page ${CMAKE_SOURCE_DIR}/docs/piece-file.md)
  set(head ${CMAKE_SOURCE_DIR}/src/build/piece_file_head.md)
  add_executable(piece_file_page ${CMAKE_SOURCE_DIR}/src/build/piece_file_page.c)
  target_link_libraries(piece_file_page PRIVATE tt_piecefile)
  add_custom_target(manual_piece_file COMMAND piece_file_page ${head} > ${page} VERBATIM)
  add_test(NAME meta_piece_file_page COMMAND ${CMAKE_COMMAND} -DTOOL=$<TARGET_FILE:piece_file_page>
    -DTIPTOE=$<TARGET_FILE:tiptoe> -DHEAD=${head} -DPAGE=${page} -DSCRATCH=${CMAKE_CURRENT_BINARY_DIR}
    -P ${CMAKE_CURRENT_SOURCE_DIR}/meta/page.cmake)

  # docs/piece.schema.json, likewise.
  set(schema ${CMAKE_SOURCE_DIR}/docs/piece.schema.json)
  add_executable(piece_schema ${CMAKE_SOURCE_DIR}/src/build/piece_schema.c ${CMAKE_SOURCE_DIR}/src/build/schema_units.c)
  target_link_libraries(piece_schema PRIVATE tt_piecefile PkgConfig::CJSON)
  add_custom_target(manual_piece_schema COMMAND piece_schema > ${schema} VERBATIM)
  add_test(NAME meta_piece_schema COMMAND ${CMAKE_COMMAND} -DTOOL=$<TARGET_FILE:piece_schema> -DFILE=${schema}
    -DTARGET=manual_piece_schema -DSCRATCH=${CMAKE_CURRENT_BINARY_DIR}/piece.schema.json
    -P ${CMAKE_CURRENT_SOURCE_DIR}/meta/made.cmake)

  # The schemas of the results, from their templates and the tables of words.
  add_executable(result_schema ${CMAKE_SOURCE_DIR}/src/build/result_schema.c)
  target_link_libraries(result_schema PRIVATE libtiptoe)
  target_include_directories(result_schema PRIVATE ${CMAKE_SOURCE_DIR}/src)
  set(made)
  foreach(result result weigh)
    set(from ${CMAKE_SOURCE_DIR}/src/build/${result}.schema.json.in)
    set(to ${CMAKE_SOURCE_DIR}/docs/${result}.schema.json)
    list(APPEND made COMMAND result_schema ${from} > ${to})
    add_test(NAME meta_${result}_schema COMMAND ${CMAKE_COMMAND} -DTOOL=$<TARGET_FILE:result_schema> -DFROM=${from}
      -DFILE=${to} -DTARGET=manual_result_schema -DSCRATCH=${CMAKE_CURRENT_BINARY_DIR}/${result}.schema.json
      -P ${CMAKE_CURRENT_SOURCE_DIR}/meta/made.cmake)
  endforeach()
  add_custom_target(manual_result_schema ${made} VERBATIM)

  add_test(NAME install_consumer COMMAND sh ${CMAKE_CURRENT_SOURCE_DIR}/install/run ${CMAKE_BINARY_DIR}
    ${CMAKE_INSTALL_LIBDIR} ${CMAKE_C_COMPILER} "${TIPTOE_SANITIZE}")

  # Memory of the whole program; the sanitizers look at it otherwise.
  find_program(VALGRIND valgrind)
  if(VALGRIND AND NOT TIPTOE_SANITIZE)
    add_test(NAME memory_valgrind COMMAND ${CMAKE_COMMAND} -DVALGRIND=${VALGRIND} -DTIPTOE=$<TARGET_FILE:tiptoe>
      -DROOT=${CMAKE_SOURCE_DIR} -P ${CMAKE_CURRENT_SOURCE_DIR}/meta/valgrind.cmake)
  else()
    message(STATUS "test memory_valgrind is left out: no valgrind, or a build with sanitizers")
  endif()
endif()
