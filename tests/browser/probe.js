// Run inside a page under test (see run-browser): what it finds goes to the element #found of the page
// that holds it in a frame. `window.troubles` was filled by the catcher in its head.
window.addEventListener("load", function () {
  var found = { troubles: window.troubles, wide: [], checks: [] };
  var page = document.documentElement, width = page.clientWidth;
  if (page.scrollWidth > width) found.wide.push("the page: " + page.scrollWidth);
  // Nothing with words may stick out, but inside a box that scrolls by itself.
  document.querySelectorAll("body *:not(script):not(style)").forEach(function (one) {
    if (one.closest(".scroll") || one.ownerSVGElement) return;
    var box = one.getBoundingClientRect();
    if (box.right > width + 1 || box.left < -1)
      found.wide.push(one.tagName + "." + one.className + ": " + box.left + " to " + box.right);
  });
  // Words of a drawing: inside it, and on none of its other words.
  found.words = 0;
  document.querySelectorAll("svg").forEach(function (drawing) {
    if (!drawing.getClientRects().length) return;
    var view = drawing.viewBox.baseVal, boxes = [];
    drawing.querySelectorAll("text").forEach(function (text) {
      var box = text.getBBox();
      found.words++;
      if (box.x < view.x - 0.3 || box.x + box.width > view.x + view.width + 0.3 ||
          box.y < view.y - 0.3 || box.y + box.height > view.y + view.height + 0.3)
        found.wide.push("words out of the drawing: " + text.textContent);
      // the box has room for letters that hang down; what is printed is less high
      box = { x: box.x, y: box.y + 0.2 * box.height, width: box.width, height: 0.6 * box.height,
        words: text.textContent };
      boxes.forEach(function (other) {
        if (box.x < other.x + other.width && other.x < box.x + box.width &&
            box.y < other.y + other.height && other.y < box.y + box.height)
          found.wide.push("words on words: " + box.words + " / " + other.words);
      });
      boxes.push(box);
    });
  });
  document.querySelectorAll("details.check").forEach(function (one) {
    found.checks.push([one.dataset.id, one.dataset.ratio, one.dataset.verdict,
      one.querySelector(".ratio").textContent, one.querySelector(".verdict").textContent]);
  });
  function moves(id, value) {
    var slider = document.getElementById(id), live = document.querySelector("svg.live");
    if (!slider) return null;
    var before = live.innerHTML;
    slider.value = value;
    slider.dispatchEvent(new Event("input"));
    return live.innerHTML !== before;
  }
  found.load = moves("load", 30);
  found.turn = moves("turn", -60);
  found.tilt = moves("tilt", 60);
  found.troubles = window.troubles;
  parent.document.getElementById("found").textContent = JSON.stringify(found);
});
