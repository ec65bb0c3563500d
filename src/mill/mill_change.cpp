#include "mill/mill_change.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "mill/toml_table.h"

namespace kerfbook::book {
namespace {

/// Tables of which each entry is told from the others by a word, so that their order says nothing.
struct Named {
  std::string_view table;
  std::string_view by;
};
constexpr std::array kNamed{Named{"customer", "code"}, Named{"job", "code"},    Named{"saw", "role"},
                            Named{"practice", "name"}, Named{"charge", "name"}, Named{"agreement", "job"}};

/// What may be said for the first time without changing what any figure comes to.
constexpr std::array<std::string_view, 17> kOnlySaid{
    "mill.name",     "mill.owner",     "mill.address",   "mill.phone",   "mill.email",    "mill.tax_number",
    "mill.logo",     "mill.terms",     "mill.sites",     "lumber.sizes", "customer.name", "customer.address",
    "customer.note", "customer.phone", "customer.email", "job.name",     "job.cut_list"};
/// Tables of the user's own words.
constexpr std::array<std::string_view, 2> kWords{"species", "grade"};
/// Tables that, said for the first time, change nothing that was worked out without them.
constexpr std::array<std::string_view, 4> kOnlyAdd{"packet", "cost", "service", "capacity"};

template <class List>
bool is_one_of(const List& list, std::string_view word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

bool is_blank(const TomlNode& node) {
  return (node.kind == TomlKind::text || node.kind == TomlKind::list) && node.written.empty() &&
         node.inside.empty();
}

/// The entry of a table; nullptr when it is not there or blank.
const TomlNode* said(const TomlNode& table, std::string_view key) {
  const TomlNode* node = table.find(key);
  return node == nullptr || is_blank(*node) ? nullptr : node;
}

bool holds_tables(const TomlNode& node) {
  return node.kind == TomlKind::list && !node.inside.empty() &&
         std::all_of(node.inside.begin(), node.inside.end(),
                     [](const TomlNode& one) { return one.kind == TomlKind::table; });
}

bool same(const TomlNode& a, const TomlNode& b);

/// Each entry of `a` that says anything stands in `b` too.
bool all_said_in(const TomlNode& a, const TomlNode& b) {
  return std::all_of(a.inside.begin(), a.inside.end(), [&](const TomlNode& entry) {
    const TomlNode* other = said(b, entry.key);
    return is_blank(entry) || (other != nullptr && same(entry, *other));
  });
}

bool same(const TomlNode& a, const TomlNode& b) {
  if (a.kind != b.kind) return false;
  if (a.kind == TomlKind::table) return all_said_in(a, b) && all_said_in(b, a);
  return a.written == b.written &&
         std::equal(a.inside.begin(), a.inside.end(), b.inside.begin(), b.inside.end(), same);
}

std::string_view named_by(std::string_view table) {
  const auto* at =
      std::find_if(kNamed.begin(), kNamed.end(), [&](const Named& one) { return one.table == table; });
  return at == kNamed.end() ? std::string_view() : at->by;
}

/// The word an entry of a [[table]] is told by; empty when there is none.
std::string name_of(const TomlNode& entry, std::string_view table) {
  const auto by = named_by(table);
  const TomlNode* name = by.empty() ? nullptr : said(entry, by);
  return name == nullptr ? std::string() : name->written;
}

std::string at_line(const TomlNode& node) {
  return " (line " + std::to_string(node.place.line) + ")";
}

class Comparison {
 public:
  MillChange take() { return std::move(change_); }

  void file(const TomlNode& before, const TomlNode& after) {
    static const TomlNode kNothing;
    for (const TomlNode& old : before.inside) {
      if (!is_blank(old) && said(after, old.key) == nullptr) gone(header(old));
    }
    for (const TomlNode& now : after.inside) {
      if (is_blank(now)) continue;
      const TomlNode* old = said(before, now.key);
      if (holds_tables(now)) {
        entries(now.key, old == nullptr ? kNothing : *old, now);
      } else if (now.kind == TomlKind::table && old == nullptr && is_one_of(kOnlyAdd, now.key)) {
        change_.added.push_back("[" + now.key + "]");
      } else if (now.kind == TomlKind::table) {
        table(now.key, "[" + now.key + "]", old == nullptr ? kNothing : *old, now);
      } else if (old == nullptr || !same(*old, now)) {
        change_.changed.push_back(now.key + at_line(now));
      }
    }
  }

 private:
  static std::string header(const TomlNode& node) {
    return holds_tables(node) ? "[[" + node.key + "]]" : "[" + node.key + "]";
  }
  void lost(const std::string& name, const std::string& word, const TomlNode& old) {
    if (!word.empty()) return gone("[[" + name + "]] " + word);
    change_.changed.push_back("the [[" + name + "]] that stood at line " + std::to_string(old.place.line) +
                              " is changed or gone");
  }
  void gone(const std::string& what) { change_.changed.push_back(what + " is taken out"); }

  /// The entries of a [[table]].
  void entries(const std::string& name, const TomlNode& before, const TomlNode& after) {
    std::vector<const TomlNode*> left;
    for (const TomlNode& now : after.inside) left.push_back(&now);
    std::size_t from = 0;  // entries without a word of their own are matched in their order
    for (const TomlNode& old : before.inside) {
      const std::string word = name_of(old, name);
      const auto begin = left.begin() + static_cast<std::ptrdiff_t>(word.empty() ? from : 0);
      const auto at = std::find_if(begin, left.end(), [&](const TomlNode* now) {
        return now != nullptr && (word.empty() ? same(old, *now) : same_word(name_of(*now, name), word));
      });
      if (at == left.end()) {
        lost(name, word, old);
        continue;
      }
      if (word.empty()) {
        from = static_cast<std::size_t>(at - left.begin()) + 1;
      } else {
        table(name, "[[" + name + "]] " + word, old, **at);
      }
      *at = nullptr;
    }
    for (const TomlNode* now : left) {
      if (now == nullptr) continue;
      const std::string word = name_of(*now, name);
      change_.added.push_back(word.empty() ? "a " + name + at_line(*now) : name + " " + word);
    }
  }

  void table(const std::string& name, const std::string& title, const TomlNode& before,
             const TomlNode& after) {
    for (const TomlNode& old : before.inside) {
      if (!is_blank(old) && said(after, old.key) == nullptr) gone(title + " " + old.key);
    }
    for (const TomlNode& now : after.inside) {
      if (is_blank(now)) continue;
      const TomlNode* old = said(before, now.key);
      if (old != nullptr && same(*old, now)) continue;
      const bool only_said = is_one_of(kOnlySaid, name + "." + now.key);
      if (only_said && (now.kind == TomlKind::list || (old != nullptr && old->kind == TomlKind::list))) {
        items(title + " " + now.key, old, now);
      } else if (old == nullptr && (only_said || is_one_of(kWords, name))) {
        change_.added.push_back(only_said ? title + " " + now.key : name + " " + now.key);
      } else {
        change_.changed.push_back(title + " " + now.key + at_line(now));
      }
    }
  }

  /// A list that stands by itself: what was in it is still there, in its order.
  void items(const std::string& title, const TomlNode* before, const TomlNode& after) {
    const std::vector<TomlNode> old_items = before == nullptr ? std::vector<TomlNode>() : as_list(*before);
    auto old = old_items.begin();
    std::vector<std::string> added;
    for (const TomlNode& now : as_list(after)) {
      if (old != old_items.end() && same(*old, now)) {
        ++old;
      } else {
        added.push_back(title + " " + now.written);
      }
    }
    if (old != old_items.end()) {
      change_.changed.push_back(title + at_line(after));
    } else {
      change_.added.insert(change_.added.end(), added.begin(), added.end());
    }
  }
  static std::vector<TomlNode> as_list(const TomlNode& node) {
    return node.kind == TomlKind::list ? node.inside : std::vector<TomlNode>{node};
  }

  MillChange change_;
};

}  // namespace

MillChange mill_change(std::string_view before, std::string_view after) {
  Comparison comparison;
  const TomlFile old = read_toml(before);
  const TomlFile now = read_toml(after);
  comparison.file(old.root, now.root);
  return comparison.take();
}

std::string listed(const std::vector<std::string>& things) {
  constexpr std::size_t kShown = 4;
  const std::size_t shown = things.size() > kShown + 1 ? kShown : things.size();
  std::vector<std::string> first(things.begin(), things.begin() + static_cast<std::ptrdiff_t>(shown));
  return join(first, ", ") +
         (shown < things.size() ? " and " + std::to_string(things.size() - shown) + " more" : "");
}

}  // namespace kerfbook::book
