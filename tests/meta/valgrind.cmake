cmake_minimum_required(VERSION 3.21)
# The whole program on three examples, text and JSON: no byte read before it was written, none lost.
foreach(piece heron lamp-boy relay)
  execute_process(COMMAND ${VALGRIND} -q --error-exitcode=99 --leak-check=full --errors-for-leak-kinds=definite,indirect,possible
    ${TIPTOE} check ${ROOT}/examples/${piece}.yaml --steps --text - --json /dev/null
    RESULT_VARIABLE result OUTPUT_VARIABLE out ERROR_VARIABLE words)
  if(NOT result MATCHES "^[014]$" OR NOT out MATCHES "Cautions")
    message(FATAL_ERROR "${piece}: ${result}\n${words}")
  endif()
endforeach()
