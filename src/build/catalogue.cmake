# The tables of data/ as const arrays: one alloy, steel or size more is a few rows there. What reads
# them is compiled twice: into the program tabulate, and into the catalogue for rows of one's own.
set(reader)
foreach(part read read_values read_metals read_stock words size)
  list(APPEND reader ${CMAKE_SOURCE_DIR}/src/catalogue/${part}.c)
endforeach()
add_executable(tabulate ${CMAKE_SOURCE_DIR}/src/build/tabulate.c ${CMAKE_SOURCE_DIR}/src/build/tabulate_write.c ${reader})
target_link_libraries(tabulate PRIVATE tt_compile tt_section tt_yamlio tt_source tt_quantity tt_base m)

set(tables)
foreach(table alloys fillers steels materials stock rods)
  list(APPEND tables ${CMAKE_SOURCE_DIR}/data/${table}.csv)
endforeach()
set(TT_GENERATED_catalogue ${CMAKE_CURRENT_BINARY_DIR}/catalogue_tables.c)
add_custom_command(OUTPUT ${TT_GENERATED_catalogue}
  COMMAND tabulate ${TT_GENERATED_catalogue} ${tables}
  DEPENDS tabulate ${tables}
  COMMENT "Tables of metals and stock" VERBATIM)
