# The time of `tiptoe check` on the heron over that of a program that only starts: target `bench`.
# As a test it runs a few times only, so that it stays built; no figure is judged on a busy machine.
add_executable(bench_empty ${CMAKE_CURRENT_SOURCE_DIR}/bench/empty.c)
target_link_libraries(bench_empty PRIVATE tt_compile suitesparse_ldl PkgConfig::YAML PkgConfig::CJSON m)
add_executable(bench_ratio ${CMAKE_CURRENT_SOURCE_DIR}/bench/ratio.c)
target_link_libraries(bench_ratio PRIVATE tt_compile)
set(heron_check $<TARGET_FILE:bench_empty> -- $<TARGET_FILE:tiptoe> check ${CMAKE_SOURCE_DIR}/examples/heron.yaml)
add_custom_target(bench COMMAND bench_ratio 200 ${heron_check} DEPENDS bench_ratio bench_empty tiptoe USES_TERMINAL)
add_test(NAME bench_runs COMMAND bench_ratio 3 ${heron_check})
