# The piece files to begin with, data/starts, as const arrays; the first is the default of `new`.
add_executable(starts ${CMAKE_SOURCE_DIR}/src/build/starts.c)
target_link_libraries(starts PRIVATE tt_compile)
set(starts)
foreach(start figure bird pair)
  list(APPEND starts ${CMAKE_SOURCE_DIR}/data/starts/${start}.yaml)
endforeach()
set(TT_GENERATED_compose ${CMAKE_CURRENT_BINARY_DIR}/compose_starts.c)
add_custom_command(OUTPUT ${TT_GENERATED_compose}
  COMMAND starts ${TT_GENERATED_compose} ${starts}
  DEPENDS starts ${starts}
  COMMENT "Piece files to begin with" VERBATIM)
