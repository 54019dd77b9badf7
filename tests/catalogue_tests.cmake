# The build's tabulate refuses faulty tables and names the line.
add_test(NAME catalogue_refusals COMMAND ${CMAKE_COMMAND} -DTOOL=$<TARGET_FILE:tabulate>
  -DFOLDER=${CMAKE_CURRENT_SOURCE_DIR}/catalogue_bad -DOUT=${CMAKE_CURRENT_BINARY_DIR}/catalogue_refusals.c
  -P ${CMAKE_CURRENT_SOURCE_DIR}/catalogue_bad/refusals.cmake)
