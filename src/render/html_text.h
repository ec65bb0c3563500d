// html_text.h -- what a page is made of that is neither figures nor layout: text made safe, images made part of it.
#pragma once

#include <string>

namespace kerfbook::render {

/// Text that can be nothing but text on a page: markup escaped, and characters that no page may hold left out.
std::string escaped(const std::string& text);

/// A string of the style sheet: every sign but letters, digits and blanks is escaped, so that nothing ends it.
std::string style_words(const std::string& text);

/// The image inside the page itself, so that the page stays one file. Empty when the file is missing or no image.
std::string inlined_image(const std::string& file);

}  // namespace kerfbook::render
