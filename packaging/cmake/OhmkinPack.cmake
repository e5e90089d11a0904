# cpack -G DEB from the build folder. Tried on Debian 12.
set(CPACK_PACKAGE_NAME ohmkin)
set(CPACK_PACKAGE_CONTACT "The Ohmkin developers <ohmkin@ohmkin.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "which temperature sender joins a dash gauge to an engine")
set(CPACK_PACKAGE_DESCRIPTION
"Older vehicles have an analogue temperature gauge in the dash, an engine
that may be years younger or older, and a resistive sender between them.
Ohmkin says which sender joins the two, why, and, when none does, by how
much the needle is off and what would correct it. It also dates engines from
their castings, fits curves to bench readings and finds faults of the
gauge's circuit, at the terminal and in a window.")
set(CPACK_GENERATOR DEB)
set(CPACK_STRIP_FILES ON)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE
    WORLD_READ WORLD_EXECUTE)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
# Archives are read by libarchive, loaded when the first is met; sheets are set for DejaVu Sans.
set(CPACK_DEBIAN_PACKAGE_DEPENDS "libarchive13")
if(OHMKIN_WINDOW)
  string(APPEND CPACK_DEBIAN_PACKAGE_DEPENDS ", fonts-dejavu-core, hicolor-icon-theme")
  set(CPACK_DEBIAN_PACKAGE_RECOMMENDS "qt6-wayland")
endif()
include(CPack)
