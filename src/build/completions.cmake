# What shells complete behind `tiptoe`, made of the tables of verbs and options.
add_executable(completions ${CMAKE_SOURCE_DIR}/src/build/completions.c)
target_link_libraries(completions PRIVATE tt_cli tt_publish)
set(folder ${CMAKE_BINARY_DIR}/completions)
file(MAKE_DIRECTORY ${folder})
foreach(shell bash zsh fish)
  add_custom_command(OUTPUT ${folder}/tiptoe.${shell}
    COMMAND completions ${shell} > ${folder}/tiptoe.${shell}
    DEPENDS completions VERBATIM)
  list(APPEND completions ${folder}/tiptoe.${shell})
endforeach()
add_custom_target(shell_completions ALL DEPENDS ${completions})
install(FILES ${folder}/tiptoe.bash DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions RENAME tiptoe)
install(FILES ${folder}/tiptoe.zsh DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/site-functions RENAME _tiptoe)
install(FILES ${folder}/tiptoe.fish DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d)
