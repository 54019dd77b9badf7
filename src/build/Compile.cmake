# How C is compiled here: C17, warnings, no contraction of a*b+c (same bytes everywhere); nobody asks
# functions of math.h for errno.
if(NOT CMAKE_BUILD_TYPE AND NOT CMAKE_CONFIGURATION_TYPES)
  set(CMAKE_BUILD_TYPE Release CACHE STRING "" FORCE)
endif()
set(CMAKE_C_STANDARD 17)
set(CMAKE_C_STANDARD_REQUIRED ON)
set(CMAKE_C_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)

add_library(tt_compile INTERFACE)
target_compile_options(tt_compile INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Wstrict-prototypes -Wmissing-prototypes
  -Wvla -ffp-contract=off -fno-math-errno $<$<BOOL:${TIPTOE_WERROR}>:-Werror>)
target_compile_definitions(tt_compile INTERFACE _POSIX_C_SOURCE=200809L)
target_include_directories(tt_compile INTERFACE
  ${CMAKE_SOURCE_DIR}/include ${CMAKE_SOURCE_DIR}/src ${CMAKE_BINARY_DIR}/include)
target_link_libraries(tt_compile INTERFACE m)
if(TIPTOE_SANITIZE)
  target_compile_options(tt_compile INTERFACE -fsanitize=${TIPTOE_SANITIZE} -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_link_options(tt_compile INTERFACE -fsanitize=${TIPTOE_SANITIZE})
endif()
