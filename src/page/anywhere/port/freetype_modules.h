/* SPDX-License-Identifier: MIT */
/* The parts of FreeType that the program uses: TrueType faces and the names of their characters. */
FT_USE_MODULE(FT_Driver_ClassRec, tt_driver_class)
FT_USE_MODULE(FT_Module_Class, sfnt_module_class)
FT_USE_MODULE(FT_Module_Class, psnames_module_class)
