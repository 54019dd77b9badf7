# What is installed: the program, the library with its headers, the manual page, the licence, and
# what finds the library again: pkg-config and CMake. Nothing in them names the place.
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

install(TARGETS libtiptoe ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR})
if(TARGET tiptoe)
  install(TARGETS tiptoe RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
endif()
install(DIRECTORY ${CMAKE_SOURCE_DIR}/include/tiptoe DESTINATION ${CMAKE_INSTALL_INCLUDEDIR})
install(FILES ${CMAKE_BINARY_DIR}/include/tiptoe/version.h DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/tiptoe)
install(FILES ${CMAKE_SOURCE_DIR}/LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR})
install(FILES ${CMAKE_SOURCE_DIR}/docs/piece.schema.json ${CMAKE_SOURCE_DIR}/docs/result.schema.json
  DESTINATION ${CMAKE_INSTALL_DATADIR}/tiptoe)
if(TARGET manual)
  install(FILES ${CMAKE_BINARY_DIR}/tiptoe.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
endif()

file(RELATIVE_PATH TT_UP /p/${CMAKE_INSTALL_LIBDIR}/pkgconfig /p)
configure_file(${CMAKE_SOURCE_DIR}/src/build/tiptoe.pc.in ${CMAKE_BINARY_DIR}/tiptoe.pc @ONLY)
install(FILES ${CMAKE_BINARY_DIR}/tiptoe.pc DESTINATION ${CMAKE_INSTALL_LIBDIR}/pkgconfig)

set(package ${CMAKE_INSTALL_LIBDIR}/cmake/tiptoe)
configure_package_config_file(${CMAKE_SOURCE_DIR}/src/build/tiptoeConfig.cmake.in ${CMAKE_BINARY_DIR}/tiptoeConfig.cmake
  INSTALL_DESTINATION ${package} PATH_VARS CMAKE_INSTALL_LIBDIR CMAKE_INSTALL_INCLUDEDIR)
write_basic_package_version_file(${CMAKE_BINARY_DIR}/tiptoeConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_BINARY_DIR}/tiptoeConfig.cmake ${CMAKE_BINARY_DIR}/tiptoeConfigVersion.cmake DESTINATION ${package})
