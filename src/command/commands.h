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
void add_bill(CLI::App& app, Session& session);
void add_issue(CLI::App& app, Session& session);
void add_divide(CLI::App& app, Session& session);
void add_pay(CLI::App& app, Session& session);
void add_credit(CLI::App& app, Session& session);
void add_write_off(CLI::App& app, Session& session);
void add_waive(CLI::App& app, Session& session);
void add_load(CLI::App& app, Session& session);
void add_paper(CLI::App& app, Session& session);
void add_owed(CLI::App& app, Session& session);
void add_export(CLI::App& app, Session& session);
void add_explain(CLI::App& app, Session& session);
void add_measure(CLI::App& app, Session& session);
void add_scale(CLI::App& app, Session& session);
void add_verify(CLI::App& app, Session& session);
void add_rebuild(CLI::App& app, Session& session);
void add_help(CLI::App& app, Session& session);

}  // namespace kerfbook::command
