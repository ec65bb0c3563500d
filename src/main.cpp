// main.cpp -- the real world handed to run(): clock, terminal, environment. Everything else is a library.
#include <sqlite3.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <cstdlib>
#include <ctime>
#include <iostream>

#include "command/command.h"

namespace {

std::tm local_now() {
  const std::time_t now = std::time(nullptr);
  std::tm parts{};
  localtime_r(&now, &parts);
  return parts;
}

std::string time_of_day() {
  const std::tm now = local_now();
  char text[16];
  return {text, std::strftime(text, sizeof text, "%H:%M:%S", &now)};
}

int width_of_terminal() {
  winsize size{};
  return ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 ? size.ws_col : 80;
}

}  // namespace

int main(int argc, char** argv) {
  std::ios::sync_with_stdio(false);
  sqlite3_config(
      SQLITE_CONFIG_SINGLETHREAD);  // there is one: SQLite need not lock itself at every allocation
  const bool terminal = isatty(STDOUT_FILENO) == 1;
  kerfbook::command::Context context{
      .in = std::cin,
      .out = std::cout,
      .err = std::cerr,
      .today =
          [] {
            const std::tm now = local_now();
            return kerfbook::make_day(now.tm_year + 1900, now.tm_mon + 1, now.tm_mday);
          },
      .time_of_day = time_of_day,
      .environment = [](const std::string& name) -> std::optional<std::string> {
        const char* value = std::getenv(name.c_str());
        if (value == nullptr || *value == '\0') return std::nullopt;
        return value;
      },
      .out_is_terminal = terminal,
      .terminal_width = terminal ? width_of_terminal() : 0,
  };
  return kerfbook::command::run({argv + 1, argv + argc}, context);
}
