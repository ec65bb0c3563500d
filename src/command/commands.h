// commands.h -- the forms behind the rows of the table of commands; each is defined in the file of its
// name.
#pragma once

#include "command/command.h"

namespace kerfbook::command {

Form new_form();
Form check_form();
Form post_form();
Form show_form();
Form journal_form();
Form report_form();
Form packet_form();
Form bill_form();
Form issue_form();
Form divide_form();
Form pay_form();
Form credit_form();
Form write_off_form();
Form waive_form();
Form load_form();
Form paper_form();
Form owed_form();
Form export_form();
Form explain_form();
Form measure_form();
Form scale_form();
Form verify_form();
Form rebuild_form();
Form copy_form();
Form restore_form();
Form salvage_form();
Form sign_form();
Form help_form();

}  // namespace kerfbook::command
