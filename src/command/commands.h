// commands.h -- the functions behind the rows of the table of commands; each is defined in the file of its
// name.
#pragma once

#include "command/command.h"

namespace kerfbook::command {

void add_new(CLI::App& app, Session& session);
void add_check(CLI::App& app, Session& session);
void add_post(CLI::App& app, Session& session);
void add_show(CLI::App& app, Session& session);
void add_journal(CLI::App& app, Session& session);
void add_report(CLI::App& app, Session& session);
void add_packet(CLI::App& app, Session& session);
void add_measure(CLI::App& app, Session& session);
void add_scale(CLI::App& app, Session& session);
void add_verify(CLI::App& app, Session& session);
void add_rebuild(CLI::App& app, Session& session);

}  // namespace kerfbook::command
