# cmake --install build [--strip], or cpack -G DEB: the programs that were configured, what a desktop and a shell know
# them by, and what a user reads. Neither program needs a file of ours at run time: schema and demo data are in them.
include(GNUInstallDirs)
install(TARGETS ohmkin RUNTIME)
set(OHMKIN_SHARE ${CMAKE_INSTALL_DATAROOTDIR})
install(FILES README.md packaging/debian/copyright DESTINATION ${OHMKIN_SHARE}/doc/ohmkin)
set(made "${PROJECT_BINARY_DIR}/installed")
file(MAKE_DIRECTORY "${made}")

# Without the time in it: the same text makes the same file.
find_program(OHMKIN_GZIP gzip REQUIRED)
set(OHMKIN_PACKED "")
function(ohmkin_packed source name destination)
  add_custom_command(OUTPUT "${made}/${name}.gz"
    COMMAND ${OHMKIN_GZIP} -9nc "${source}" > "${made}/${name}.gz" DEPENDS "${source}" VERBATIM)
  install(FILES "${made}/${name}.gz" DESTINATION ${destination})
  set(OHMKIN_PACKED ${OHMKIN_PACKED} "${made}/${name}.gz" PARENT_SCOPE)
endfunction()

# The manual page and the completions are what the program itself says of its commands.
function(ohmkin_said name)
  add_custom_command(OUTPUT "${made}/${name}"
    COMMAND ohmkin ${ARGN} > "${made}/${name}" DEPENDS ohmkin VERBATIM)
endfunction()
ohmkin_said(ohmkin.1 --man)
ohmkin_said(ohmkin.bash --completion bash)
ohmkin_said(_ohmkin --completion zsh)
ohmkin_said(ohmkin.fish --completion fish)
ohmkin_packed("${made}/ohmkin.1" ohmkin.1 ${CMAKE_INSTALL_MANDIR}/man1)
install(FILES "${made}/ohmkin.bash" DESTINATION ${OHMKIN_SHARE}/bash-completion/completions RENAME ohmkin)
install(FILES "${made}/_ohmkin" DESTINATION ${OHMKIN_SHARE}/zsh/vendor-completions)
install(FILES "${made}/ohmkin.fish" DESTINATION ${OHMKIN_SHARE}/fish/vendor_completions.d)

configure_file(packaging/debian/changelog.in "${made}/changelog" @ONLY)
ohmkin_packed("${made}/changelog" changelog ${OHMKIN_SHARE}/doc/ohmkin)

if(OHMKIN_WINDOW)
  install(TARGETS ohmkin-window RUNTIME)
  configure_file(packaging/desktop/ohmkin-window.1.in "${made}/ohmkin-window.1" @ONLY)
  ohmkin_packed("${made}/ohmkin-window.1" ohmkin-window.1 ${CMAKE_INSTALL_MANDIR}/man1)
  configure_file(packaging/desktop/invalid.ohmkin.Ohmkin.metainfo.xml.in
                 "${made}/invalid.ohmkin.Ohmkin.metainfo.xml" @ONLY)
  install(FILES "${made}/invalid.ohmkin.Ohmkin.metainfo.xml" DESTINATION ${OHMKIN_SHARE}/metainfo)
  install(FILES packaging/desktop/ohmkin.desktop DESTINATION ${OHMKIN_SHARE}/applications)
  install(FILES packaging/desktop/ohmkin.xml DESTINATION ${OHMKIN_SHARE}/mime/packages)
  install(FILES ui/drawings/ohmkin.svg DESTINATION ${OHMKIN_SHARE}/icons/hicolor/scalable/apps)
  install(FILES ui/drawings/ohmkin.svg DESTINATION ${OHMKIN_SHARE}/icons/hicolor/scalable/mimetypes
          RENAME application-x-ohmkin.svg)
endif()
add_custom_target(ohmkin_installed ALL
  DEPENDS "${made}/ohmkin.1" "${made}/ohmkin.bash" "${made}/_ohmkin" "${made}/ohmkin.fish" ${OHMKIN_PACKED})
