# scdoc reads standard input and writes standard output. Its date is fixed: same input, same bytes.
set(ENV{SOURCE_DATE_EPOCH} 0)
execute_process(COMMAND ${SCDOC} INPUT_FILE ${FROM} OUTPUT_FILE ${TO} RESULT_VARIABLE result)
if(result)
  file(REMOVE ${TO})
  message(FATAL_ERROR "scdoc could not make ${TO}")
endif()
