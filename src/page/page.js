"use strict";
// Turns the drawing of the frame and slides its load. The page reads well without it.
(function () {
  var source = document.getElementById("frame-data");
  var figure = document.getElementById("model");
  if (!source || !figure) return;
  var frame = JSON.parse(source.textContent);
  var NS = "http://www.w3.org/2000/svg";
  var TONES = ["#ffffff", "#fcf8ee", "#f3e7cd", "#e6cfa2", "#efefec", "#d3a878"];
  var FAILS = 5;
  var WIDE = 100, HIGH = 90;

  // The middle of the frame, and a scale at which it fits however it is turned.
  var low = [Infinity, Infinity, Infinity], high = [-Infinity, -Infinity, -Infinity];
  frame.sticks.forEach(function (stick) {
    stick.at.forEach(function (p) {
      for (var c = 0; c < 3; c++) {
        low[c] = Math.min(low[c], p[c]);
        high[c] = Math.max(high[c], p[c]);
      }
    });
  });
  var middle = [0, 1, 2].map(function (c) { return (low[c] + high[c]) / 2; });
  var size = Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]) || 1;
  var scale = Math.min(WIDE, HIGH) * 0.94 / size;

  var live = document.createElementNS(NS, "svg");
  live.setAttribute("class", "live");
  live.setAttribute("viewBox", "0 0 " + WIDE + " " + HIGH);
  live.setAttribute("role", "img");
  live.setAttribute("aria-label", "the frame, to be turned");
  figure.appendChild(live);
  figure.classList.add("alive");

  var controls = document.createElement("div");
  controls.className = "controls";
  figure.appendChild(controls);
  function slider(id, words, from, to, value) {
    var label = document.createElement("label"), input = document.createElement("input");
    label.textContent = words;
    label.htmlFor = input.id = id;
    input.type = "range";
    input.min = from;
    input.max = to;
    input.value = value;
    controls.appendChild(label);
    controls.appendChild(input);
    input.addEventListener("input", draw);
    return input;
  }
  var turn = slider("turn", "turn", -180, 180, 32);
  var tilt = slider("tilt", "tilt", -10, 90, 24);
  var load = frame.combination ? slider("load", "load", 0, 100, 100) : null;
  var told = document.createElement("output");
  controls.appendChild(told);

  function line(points, width, colour) {
    var path = document.createElementNS(NS, "polyline");
    path.setAttribute("points", points.map(function (p) {
      return p[0].toFixed(2) + "," + p[1].toFixed(2);
    }).join(" "));
    path.setAttribute("fill", "none");
    path.setAttribute("stroke", colour);
    path.setAttribute("stroke-width", width.toFixed(2));
    path.setAttribute("stroke-linejoin", "round");
    live.appendChild(path);
  }

  function draw() {
    var round = turn.value * Math.PI / 180, down = tilt.value * Math.PI / 180;
    var share = load ? load.value / 100 * frame.times : 0;
    var s = Math.sin(round), c = Math.cos(round), sd = Math.sin(down), cd = Math.cos(down);
    function spot(p, by) {
      var x = p[0] - middle[0] + share * by[0], y = p[1] - middle[1] + share * by[1];
      var z = p[2] - middle[2] + share * by[2];
      return [WIDE / 2 + scale * (c * x + s * y),
        HIGH / 2 - scale * (-s * sd * x + c * sd * y + cd * z), s * cd * x - c * cd * y + sd * z];
    }
    var pieces = [];
    frame.sticks.forEach(function (stick) {
      var spots = stick.at.map(function (p, k) { return spot(p, stick.by[k]); });
      for (var k = 0; k + 1 < spots.length; k++)
        pieces.push({ ends: [spots[k], spots[k + 1]], stick: stick,
          depth: (spots[k][2] + spots[k + 1][2]) / 2 });
    });
    pieces.sort(function (a, b) { return a.depth - b.depth; });
    while (live.firstChild) live.removeChild(live.firstChild);
    pieces.forEach(function (piece) {
      var width = Math.max(piece.stick.width * scale, 0.6);
      line(piece.ends, width + (piece.stick.work === FAILS ? 0.8 : 0.45), "#3a332b");
      line(piece.ends, width, TONES[piece.stick.work]);
    });
    told.textContent = load ? load.value + " % of the load " + frame.combination + ", " + frame.words : "";
  }

  // Dragging sideways and up or down turns it, too.
  var from = null;
  live.addEventListener("pointerdown", function (event) {
    from = { x: event.clientX, y: event.clientY, turn: +turn.value, tilt: +tilt.value };
    live.setPointerCapture(event.pointerId);
  });
  live.addEventListener("pointermove", function (event) {
    if (!from) return;
    turn.value = (from.turn - (event.clientX - from.x) / 2 + 540) % 360 - 180;
    tilt.value = from.tilt + (event.clientY - from.y) / 2;
    draw();
  });
  ["pointerup", "pointercancel"].forEach(function (name) {
    live.addEventListener(name, function () { from = null; });
  });
  draw();

  // On paper nothing can be opened: there every check stands, some with their working.
  var opened = [];
  window.addEventListener("beforeprint", function () {
    opened = Array.prototype.slice.call(document.querySelectorAll(
      "details.rest:not([open]), details.on-paper:not([open])"));
    opened.forEach(function (one) { one.open = true; });
  });
  window.addEventListener("afterprint", function () {
    opened.forEach(function (one) { one.open = false; });
  });
})();
