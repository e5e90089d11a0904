# cmake --install build [--strip]: the programs that were configured, and what a user reads.
include(GNUInstallDirs)
install(TARGETS ohmkin RUNTIME)
if(OHMKIN_WINDOW)
  install(TARGETS ohmkin-window RUNTIME)
endif()
install(FILES README.md LICENSE DESTINATION ${CMAKE_INSTALL_DATAROOTDIR}/doc/ohmkin)
