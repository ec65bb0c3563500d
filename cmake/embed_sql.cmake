# Writes OUT: the text of every schema and report file as one table, read through book/embedded.h.
set(TEXT "// made by cmake/embed_sql.cmake; change the .sql files instead\n#include \"book/embedded.h\"\n\n")
string(APPEND TEXT "namespace kerfbook::book {\nnamespace {\nconst EmbeddedFile kFiles[] = {\n")
file(GLOB FILES RELATIVE ${ROOT} ${ROOT}/schema/*.sql ${ROOT}/schema/views/*.sql ${ROOT}/reports/*.sql
  ${ROOT}/reports/parts/*.sql)
list(SORT FILES)
foreach(FILE ${FILES})
  file(READ ${ROOT}/${FILE} BODY)
  string(APPEND TEXT "    {\"${FILE}\", R\"~sql~(${BODY})~sql~\"},\n")
endforeach()
string(APPEND TEXT "};\n}  // namespace\n\nstd::span<const EmbeddedFile> embedded_files() { return kFiles; }\n\n")
string(APPEND TEXT "}  // namespace kerfbook::book\n")
file(WRITE ${OUT} "${TEXT}")
