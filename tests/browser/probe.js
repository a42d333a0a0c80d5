// Run inside a page under test (see run-browser): what it finds goes to the element #found-NUMBER of the page
// that holds it in a frame. `window.troubles` was filled by the catcher in its head; the page as it was
// written, before catcher and probe, is an attribute of the frame (of the first width only, it takes time).
window.addEventListener("load", function () {
  var holder = window.frameElement, written = holder.dataset.page;
  var found = { troubles: window.troubles, wrong: [], checks: [], words: 0 };
  var page = document.documentElement, width = page.clientWidth;
  function wrong(words) { found.wrong.push(words); }

  // Nothing may stick out or scroll sideways.
  function stays_in(when) {
    if (page.scrollWidth > width) wrong(when + "the page is " + page.scrollWidth + " wide");
    document.querySelectorAll("body *:not(script):not(style)").forEach(function (one) {
      if (one.ownerSVGElement || !one.getClientRects().length) return;
      var box = one.getBoundingClientRect(), name = one.tagName + "." + one.getAttribute("class");
      if (box.right > width + 1 || box.left < -1)
        wrong(when + name + ": " + box.left + " to " + box.right);
      if (one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).overflowX !== "visible")
        wrong(when + name + " scrolls sideways: " + one.scrollWidth + " in " + one.clientWidth);
    });
  }

  // Words of a drawing: inside it, and on none of its other words.
  function words_of(drawing) {
    var view = drawing.viewBox.baseVal, boxes = [];
    drawing.querySelectorAll("text").forEach(function (text) {
      var box = text.getBBox();
      found.words++;
      if (box.x < view.x - 0.3 || box.x + box.width > view.x + view.width + 0.3 ||
          box.y < view.y - 0.3 || box.y + box.height > view.y + view.height + 0.3)
        wrong("words out of the drawing: " + text.textContent);
      // the box has room for letters that hang down; what is printed is less high
      box = { x: box.x, y: box.y + 0.2 * box.height, width: box.width, height: 0.6 * box.height,
        words: text.textContent };
      boxes.forEach(function (other) {
        if (box.x < other.x + other.width && other.x < box.x + box.width &&
            box.y < other.y + other.height && other.y < box.y + box.height)
          wrong("words on words: " + box.words + " / " + other.words);
      });
      boxes.push(box);
    });
  }

  // Read as XML and as HTML it must be the same tree: then HTML has nothing to mend in it. White space alone
  // does not count, HTML moves it, nor what stands in a script.
  function inside(node) {
    return node.localName === "script" ? [] : Array.prototype.filter.call(node.childNodes, function (one) {
      return one.nodeType === Node.ELEMENT_NODE || (one.nodeType === Node.TEXT_NODE && one.data.trim());
    });
  }
  function told(node) {
    if (!node) return "nothing";
    return node.nodeType === Node.TEXT_NODE ? node.data
      : "<" + node.localName + " " + Array.prototype.map.call(node.attributes, function (one) {
        return one.name + "=" + one.value;
      }).sort().join(" ") + "> of " + node.namespaceURI;
  }
  function same(one, other) {
    if (told(one) !== told(other)) {
      wrong("HTML makes an other tree of it: " + told(one) + " / " + told(other));
      return false;
    }
    var left = inside(one), right = inside(other);
    for (var k = 0; k < Math.max(left.length, right.length); k++)
      if (!left[k] || !right[k] || !same(left[k], right[k])) {
        if (!left[k] || !right[k])
          wrong("HTML makes an other tree of it: " + told(left[k]) + " / " + told(right[k]));
        return false;
      }
    return true;
  }
  if (written) {
    var as_xml = new DOMParser().parseFromString(written, "application/xhtml+xml");
    var as_html = new DOMParser().parseFromString(written, "text/html");
    var no_xml = as_xml.querySelector("parsererror");
    if (no_xml) wrong("no XML: " + no_xml.textContent);
    else same(as_xml.documentElement, as_html.documentElement);
    if (as_html.compatMode !== "CSS1Compat") wrong("no strict HTML");
    found.still = as_html.querySelectorAll("details.check").length;
  }
  var ids = {};
  document.querySelectorAll("[id]").forEach(function (one) {
    if (ids[one.id]) wrong("two of the id " + one.id);
    ids[one.id] = true;
  });

  // Nothing comes from elsewhere, and the page itself forbids it.
  var policy = document.querySelector("meta[http-equiv=Content-Security-Policy]");
  if (!policy || policy.content.indexOf("default-src 'none'") !== 0) wrong("no policy against fetching");
  performance.getEntriesByType("resource").forEach(function (entry) { wrong("fetches " + entry.name); });
  if (document.fonts.size) wrong("brings a font");

  function moves(id, value) {
    var slider = document.getElementById(id), live = document.querySelector("svg.live");
    if (!slider || !live) return null;
    var before = live.innerHTML;
    slider.value = value;
    slider.dispatchEvent(new Event("input"));
    return live.innerHTML !== before;
  }
  found.load = moves("load", 30);
  found.turn = moves("turn", -60);
  found.tilt = moves("tilt", 60);

  stays_in("");
  document.querySelectorAll("details").forEach(function (one) { one.open = true; });
  stays_in("open: ");
  document.querySelectorAll("svg").forEach(function (drawing) {
    if (drawing.getClientRects().length) words_of(drawing);
  });
  document.querySelectorAll("details.check").forEach(function (one) {
    found.checks.push([one.dataset.id, one.dataset.ratio, one.dataset.verdict,
      one.querySelector(".ratio").textContent, one.querySelector(".verdict").textContent]);
  });
  // what is refused is told a moment later
  setTimeout(function () {
    found.troubles = window.troubles;
    parent.document.getElementById("found-" + holder.dataset.number).textContent = JSON.stringify(found);
  }, 50);
});
