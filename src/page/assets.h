/* page/assets.h - the style and the script of the page; made from page.css and page.js by the
 * build.
 */
#ifndef PAGE_ASSETS_H
#define PAGE_ASSETS_H

extern const char PAGE_CSS[];
extern const char PAGE_JS[];

#endif
