# What `cmake --install` puts where: the program, the libraries of the layers with their headers as a CMake package,
# and the data the program reads.
include(CMakePackageConfigHelpers)

get_property(installed_layers GLOBAL PROPERTY witnessmark_layers)
set(package_folder ${CMAKE_INSTALL_LIBDIR}/cmake/witnessmark)

if(TARGET witnessmark)
  install(TARGETS witnessmark RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
endif()
install(TARGETS ${installed_layers} EXPORT witnessmarkTargets ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR})
install(EXPORT witnessmarkTargets NAMESPACE witnessmark:: DESTINATION ${package_folder})
install(DIRECTORY include/witnessmark DESTINATION ${CMAKE_INSTALL_INCLUDEDIR} FILES_MATCHING PATTERN "*.h")
install(DIRECTORY shared/ DESTINATION ${CMAKE_INSTALL_DATADIR}/witnessmark)
install(DIRECTORY schemas DESTINATION ${CMAKE_INSTALL_DATADIR}/witnessmark)
install(FILES LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR})

list(TRANSFORM installed_layers REPLACE "^witnessmark_" "" OUTPUT_VARIABLE layer_names)
configure_package_config_file(src/witnessmarkConfig.cmake.in ${CMAKE_BINARY_DIR}/witnessmarkConfig.cmake
                              INSTALL_DESTINATION ${package_folder} NO_SET_AND_CHECK_MACRO)
# Before version 1 a change of the minor version may break those who use the libraries.
write_basic_package_version_file(${CMAKE_BINARY_DIR}/witnessmarkConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_BINARY_DIR}/witnessmarkConfig.cmake ${CMAKE_BINARY_DIR}/witnessmarkConfigVersion.cmake
        DESTINATION ${package_folder})
