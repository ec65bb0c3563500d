// desk.h -- the whole program inside the test, with a clock of the test's own.
#pragma once

#include <sstream>

#include "command/command.h"
#include "command/program.h"

namespace kerfbook::tests {

/// As if kerfbook were called at that day and time: "2026-06-02", "20:14:07".
inline Ran run_at(const std::string& day, const std::string& time,
                  const std::vector<std::string>& arguments) {
  std::istringstream in;
  std::ostringstream out;
  std::ostringstream err;
  command::Context context{.in = in,
                           .out = out,
                           .err = err,
                           .today = [&] { return read_day(day).value(); },
                           .time_of_day = [&] { return time; },
                           .environment = [](const std::string&) { return std::optional<std::string>(); }};
  Ran ran;
  ran.code = command::run(arguments, context);
  ran.out = out.str();
  ran.err = err.str();
  return ran;
}

/// A book with an invoice of 100.00 on it, in a folder of its own.
inline std::string book_with_an_invoice(const Scratch& scratch) {
  const std::string book = (scratch / "mill.book").string();
  spill(scratch / "mill.toml",
        "[[price]]\nbasis = \"hour\"\nrate = 100\n\n[[customer]]\ncode = \"BRN\"\nname = \"Brenn\"\n\n"
        "[[job]]\ncode = \"BRN\"\ncustomer = \"BRN\"\n");
  spill(scratch / "day.sheet",
        "sheet 2026-06-01\njob BRN\nspecies DF\nsawing 8:00-9:00\n2x6 5/12\nbundle B1\n2x6 5/16\nbundle -\n"
        "sold cash 2x6 3/12 at 1.00\n");
  for (const auto& words :
       std::vector<std::vector<std::string>>{{"new", book, "--mill", (scratch / "mill.toml").string()},
                                             {"-b", book, "post", (scratch / "day.sheet").string()},
                                             {"-b", book, "issue", "BRN"}}) {
    const Ran ran = run_at("2026-06-02", "18:00:00", words);
    if (ran.code != 0) throw std::runtime_error(ran.err);
  }
  return book;
}

}  // namespace kerfbook::tests
