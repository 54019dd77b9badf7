# The libraries we link, each to the modules that use it and to no other.
find_package(PkgConfig REQUIRED)
pkg_check_modules(YAML REQUIRED IMPORTED_TARGET yaml-0.1)
pkg_check_modules(CJSON REQUIRED IMPORTED_TARGET libcjson)

find_path(SUITESPARSE_INCLUDE ldl.h PATH_SUFFIXES suitesparse REQUIRED)
find_library(LDL_LIBRARY ldl REQUIRED)
find_library(AMD_LIBRARY amd REQUIRED)
add_library(suitesparse_ldl INTERFACE)
target_include_directories(suitesparse_ldl SYSTEM INTERFACE ${SUITESPARSE_INCLUDE})
target_link_libraries(suitesparse_ldl INTERFACE ${LDL_LIBRARY} ${AMD_LIBRARY})

set(TT_LIBRARIES_num suitesparse_ldl m)
set(TT_LIBRARIES_yamlio PkgConfig::YAML)
set(TT_LIBRARIES_record PkgConfig::CJSON)
