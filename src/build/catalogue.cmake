# The tables of data/ as const arrays: one alloy, steel or size more is a few rows there.
add_executable(tabulate ${CMAKE_SOURCE_DIR}/src/build/tabulate.c ${CMAKE_SOURCE_DIR}/src/build/tabulate_write.c)
target_link_libraries(tabulate PRIVATE tt_compile m)

set(tables)
foreach(table alloys steels stock)
  list(APPEND tables ${CMAKE_SOURCE_DIR}/data/${table}.csv)
endforeach()
set(TT_GENERATED_catalogue ${CMAKE_CURRENT_BINARY_DIR}/catalogue_tables.c)
add_custom_command(OUTPUT ${TT_GENERATED_catalogue}
  COMMAND tabulate ${TT_GENERATED_catalogue} ${tables}
  DEPENDS tabulate ${tables}
  COMMENT "Tables of metals and stock" VERBATIM)
