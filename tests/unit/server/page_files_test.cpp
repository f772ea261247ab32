#include "server/page_files.hpp"

#include <gtest/gtest.h>

#include "support/source_dir.hpp"

namespace repwright::server {
namespace {

namespace fs = std::filesystem;

TEST(PageFiles, AreFoundByTheirAddress) {
  const auto page = load_page(test::source_dir() / "tests/data/page");
  ASSERT_TRUE(page.has_value()) << page.error().message;
  ASSERT_NE(page->find("/assets/page-0a1B2c3D.js"), nullptr);
  EXPECT_EQ(page->find("/assets/page-0a1B2c3D.js")->type, "text/javascript; charset=utf-8");
  EXPECT_EQ(page->find("/assets/page-0a1B2c3D.js")->cache, "public, max-age=31536000, immutable");
  EXPECT_EQ(page->find("/nothing.js"), nullptr);
  EXPECT_EQ(page->find("/../page/index.html"), nullptr);
}

TEST(PageFiles, GiveTheIndexForEveryView) {
  const auto page = load_page(test::source_dir() / "tests/data/page");
  ASSERT_TRUE(page.has_value());
  const PageFile* index = page->find("/index.html");
  ASSERT_NE(index, nullptr);
  EXPECT_EQ(index->cache, "no-store");
  EXPECT_EQ(page->find("/"), index);
  EXPECT_EQ(page->find("/board"), index);
  EXPECT_EQ(page->find("/people/a07"), index);
  EXPECT_EQ(PageFiles().find("/"), nullptr);
}

TEST(PageFiles, CannotBeReadFromAFolderThatIsNotThere) {
  EXPECT_EQ(load_page("/nowhere").error().code, base::ErrorCode::Unavailable);
}

TEST(CacheOfFile, IsLongOnlyWithAHashInTheName) {
  EXPECT_EQ(cache_of_file("page-0a1B2c3D.js"), "public, max-age=31536000, immutable");
  EXPECT_EQ(cache_of_file("index.html"), "no-store");
  EXPECT_EQ(cache_of_file("page-short.js"), "no-store");
  EXPECT_EQ(cache_of_file("page"), "no-store");
}

TEST(TypeOfFile, IsBytesForAnythingUnknown) {
  EXPECT_EQ(type_of_file("font.woff2"), "font/woff2");
  EXPECT_EQ(type_of_file("x.exe"), "application/octet-stream");
}

TEST(PagePlaces, AreBesideTheProgramAndInItsPrefix) {
  EXPECT_EQ(page_places(std::nullopt, "/opt/rep/build/release/repwright"),
            (std::vector<fs::path>{"/opt/rep/build/web", "/opt/rep/build/release/web",
                                   "/opt/rep/build/share/repwright/web"}));
  EXPECT_EQ(page_places("/srv/page", "/usr/bin/repwright"), std::vector<fs::path>{"/srv/page"});
}

}  // namespace
}  // namespace repwright::server
