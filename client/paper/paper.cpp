#include "client/paper/paper.h"

#include <cairo-pdf.h>
#include <pango/pangocairo.h>

#include <algorithm>
#include <memory>

#include "absl/strings/str_cat.h"

namespace suppertide::paper {
namespace {

constexpr double kMargin = 42;  // points; 72 an inch
constexpr double kFoot = 18;
constexpr double kLargest = 15;  // of the body, points: read from an arm's length and more
constexpr double kSmallest = 10.5;
constexpr double kStep = 0.75;

struct Extent {
  double width = 595.276;
  double height = 841.89;
};

Extent extentOf(Size size) {
  return size == Size::kA4 ? Extent() : Extent{612, 792};
}

struct FreeSurface {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct FreeContext {
  void operator()(cairo_t* context) const { cairo_destroy(context); }
};
struct FreeObject {
  void operator()(PangoLayout* layout) const { g_object_unref(layout); }
};
using Layout = std::unique_ptr<PangoLayout, FreeObject>;

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

// What is not UTF-8 would stop the layout.
std::string valid(const std::string& text) {
  gchar* made = g_utf8_make_valid(text.data(), static_cast<gssize>(text.size()));
  std::string out(made);
  g_free(made);
  return out;
}

// Sets sheets down a page after the other; measures only, or draws.
class Setter {
 public:
  Setter(cairo_t* context, Extent extent, double body, bool draws)
      : context_(context), extent_(extent), body_(body), draws_(draws) {}

  int set(const Sheet& sheet, int pagesBefore) {
    page_ = pagesBefore + 1;
    first_ = page_;
    sheet_ = &sheet;
    y_ = kMargin;
    head(false);
    for (const Part& part : sheet.parts) setPart(part);
    endPage();
    return page_ - pagesBefore;
  }

 private:
  double width() const { return extent_.width - 2 * kMargin; }
  double bottom() const { return extent_.height - kMargin - kFoot; }

  Layout layout(const std::string& text, double points, bool strong, double room) const {
    Layout made(pango_cairo_create_layout(context_));
    PangoFontDescription* font = pango_font_description_new();
    pango_font_description_set_family(font, "DejaVu Sans, Noto Sans, sans-serif");
    pango_font_description_set_weight(font, strong ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_font_description_set_absolute_size(font, points * PANGO_SCALE);
    pango_layout_set_font_description(made.get(), font);
    pango_font_description_free(font);
    pango_layout_set_width(made.get(), static_cast<int>(room * PANGO_SCALE));
    pango_layout_set_wrap(made.get(), PANGO_WRAP_WORD_CHAR);
    const std::string clean = valid(text);
    pango_layout_set_text(made.get(), clean.data(), static_cast<int>(clean.size()));
    return made;
  }
  static double heightOf(const Layout& layout) {
    int height = 0;
    pango_layout_get_size(layout.get(), nullptr, &height);
    return static_cast<double>(height) / PANGO_SCALE;
  }
  static double widthOf(const Layout& layout) {
    int wide = 0;
    pango_layout_get_size(layout.get(), &wide, nullptr);
    return static_cast<double>(wide) / PANGO_SCALE;
  }
  void show(const Layout& layout, double x, double y) {
    if (!draws_) return;
    cairo_move_to(context_, x, y);
    pango_cairo_show_layout(context_, layout.get());
  }

  void text(const std::string& words, double points, bool strong, double after) {
    const Layout one = layout(words, points, strong, width());
    show(one, kMargin, y_);
    y_ += heightOf(one) + after;
  }

  void head(bool again) {
    text(again ? absl::StrCat(sheet_->title, " (", page_ - first_ + 1, ")") : sheet_->title, body_ * 1.7,
         true, 2);
    if (!again && !sheet_->subtitle.empty()) text(sheet_->subtitle, body_, false, 4);
    line(y_ + 2, 1.2);
    y_ += 10;
  }

  void line(double y, double thick) {
    if (!draws_) return;
    cairo_set_line_width(context_, thick);
    cairo_move_to(context_, kMargin, y);
    cairo_line_to(context_, extent_.width - kMargin, y);
    cairo_stroke(context_);
  }

  void setPart(const Part& part) {
    if (!part.title.empty()) {
      const double wanted = body_ * 3 + (part.items.empty() ? 0 : itemHeight(part.items.front()));
      if (y_ + wanted > bottom()) newPage();
      y_ += body_ * 0.5;
      text(part.title, body_ * 1.2, true, 4);
    }
    for (const Item& item : part.items) setItem(item);
  }

  double leadWidth() const { return body_ * 7.6; }

  // Draws where it is told to; gives the height.
  double placeItem(const Item& item, double top, bool draw) {
    const bool drew = draws_;
    draws_ = drew && draw;
    double x = kMargin;
    double tall = 0;
    if (item.box) {
      if (draws_) {
        cairo_set_line_width(context_, 1);
        cairo_rectangle(context_, x + 1, top + body_ * 0.15, body_, body_);
        cairo_stroke(context_);
      }
      x += body_ * 1.8;
    }
    if (!item.lead.empty()) {
      const Layout lead = layout(item.lead, body_, true, leadWidth());
      show(lead, x, top);
      tall = heightOf(lead);
      x += leadWidth() + body_ * 0.4;
    }
    const double room = extent_.width - kMargin - x;
    double y = top;
    const auto put = [&](const std::string& words, double points, bool strong) {
      const Layout one = layout(words, points, strong, room);
      show(one, x, y);
      y += heightOf(one) + 1;
    };
    put(item.title, body_ * 1.1, true);
    for (const std::string& detail : item.details) put(detail, body_ * 0.86, false);
    for (const std::string& warning : item.warnings) y = placeWarning(warning, x, y, room);
    draws_ = drew;
    return std::max(tall, y - top);
  }

  // In a frame, so that it does not hang on colour.
  double placeWarning(const std::string& words, double x, double y, double room) {
    const Layout one = layout(absl::StrCat("! ", words), body_ * 0.86, true, room - 8);
    const double tall = heightOf(one) + 4;
    if (draws_) {
      cairo_set_line_width(context_, 0.8);
      cairo_rectangle(context_, x, y + 1, std::min(room, widthOf(one) + 8), tall);
      cairo_stroke(context_);
    }
    show(one, x + 4, y + 3);
    return y + tall + 3;
  }
  double itemHeight(const Item& item) { return placeItem(item, 0, false); }

  void setItem(const Item& item) {
    const double tall = itemHeight(item);
    if (y_ + tall > bottom() && y_ > kMargin + body_ * 5) newPage();
    y_ += placeItem(item, y_, true) + body_ * 0.25;
    line(y_, 0.25);
    y_ += body_ * 0.25;
  }

  void newPage() {
    endPage();
    ++page_;
    y_ = kMargin;
    head(true);
  }

  void endPage() {
    if (!draws_) return;
    const Layout foot = layout(absl::StrCat(sheet_->title, " · ", page_), 8.5, false, width());
    show(foot, kMargin, extent_.height - kMargin);
    cairo_show_page(context_);
  }

  cairo_t* context_;
  const Extent extent_;
  const double body_;
  bool draws_;
  const Sheet* sheet_ = nullptr;
  double y_ = 0;
  int page_ = 1;
  int first_ = 1;
};

}  // namespace

absl::StatusOr<std::string> pdfOf(const std::vector<Sheet>& sheets, Size size, int* pages) {
  std::string bytes;
  const Extent extent = extentOf(size);
  int count = 0;
  {
    const std::unique_ptr<cairo_surface_t, FreeSurface> surface(
        cairo_pdf_surface_create_for_stream(append, &bytes, extent.width, extent.height));
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATOR, "Suppertide");
    const std::unique_ptr<cairo_t, FreeContext> context(cairo_create(surface.get()));
    for (const Sheet& sheet : sheets) {
      double body = kLargest;
      while (body - kStep >= kSmallest && Setter(context.get(), extent, body, false).set(sheet, count) > 1)
        body -= kStep;
      // What does not fit anyway is set in a size that reads well.
      if (Setter(context.get(), extent, body, false).set(sheet, count) > 1) body = (kLargest + kSmallest) / 2;
      count += Setter(context.get(), extent, body, true).set(sheet, count);
    }
    cairo_surface_finish(surface.get());
    if (const cairo_status_t status = cairo_surface_status(surface.get()); status != CAIRO_STATUS_SUCCESS)
      return absl::InternalError(absl::StrCat("write the pages: ", cairo_status_to_string(status)));
  }
  if (pages != nullptr) *pages = count;
  return bytes;
}

}  // namespace suppertide::paper
