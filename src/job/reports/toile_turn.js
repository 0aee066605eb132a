"use strict";
// Turns the toiles on the page, all together: by the slider, its buttons, or by dragging one of them.
(() => {
  const data = JSON.parse(document.getElementById("model").textContent);
  const slider = document.getElementById("turn");
  const vertex = `
    attribute vec3 place; attribute vec3 away;
    uniform vec2 turn; uniform vec4 frame; uniform float nearer;
    varying vec3 facing;
    void main() {
      vec3 p = place - vec3(0.0, frame.y, frame.w);
      vec3 q = vec3(turn.x * p.x - turn.y * p.z, p.y, turn.y * p.x + turn.x * p.z);
      facing = vec3(turn.x * away.x - turn.y * away.z, away.y, turn.y * away.x + turn.x * away.z);
      gl_Position = vec4(q.x / frame.x, q.y / frame.z, -q.z / 8000.0 - nearer, 1.0);
    }`;
  const fragment = `
    precision mediump float;
    uniform vec3 colour; uniform float shaded; varying vec3 facing;
    void main() {
      vec3 n = normalize(facing + vec3(0.0, 0.0, 1e-4));
      float light = 0.3 + 0.5 * abs(dot(n, vec3(-0.45, 0.55, 0.7))) + 0.2 * abs(n.z);
      if (!gl_FrontFacing) light *= 0.6;
      gl_FragColor = vec4(colour * mix(1.0, min(light, 1.0), shaded), 1.0);
    }`;

  const normals = (points, triangles) => {
    const sums = new Float32Array(points.length);
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => 3 * triangles[t + k]);
      const u = [0, 1, 2].map((k) => points[b + k] - points[a + k]);
      const v = [0, 1, 2].map((k) => points[c + k] - points[a + k]);
      const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
      for (const at of [a, b, c]) for (let k = 0; k < 3; k += 1) sums[at + k] += n[k];
    }
    for (let i = 0; i < sums.length; i += 3) {
      const long = Math.hypot(sums[i], sums[i + 1], sums[i + 2]) || 1;
      for (let k = 0; k < 3; k += 1) sums[i + k] /= long;
    }
    return sums;
  };

  const painter = (canvas, model) => {
    const gl = canvas.getContext("webgl", { antialias: true });
    if (!gl) return null;
    const program = gl.createProgram();
    for (const [kind, text] of [[gl.VERTEX_SHADER, vertex], [gl.FRAGMENT_SHADER, fragment]]) {
      const shader = gl.createShader(kind);
      gl.shaderSource(shader, text);
      gl.compileShader(shader);
      gl.attachShader(program, shader);
    }
    gl.linkProgram(program);
    if (!gl.getProgramParameter(program, gl.LINK_STATUS)) return null;
    gl.useProgram(program);
    gl.enable(gl.DEPTH_TEST);
    const buffer = (kind, values) => {
      const made = gl.createBuffer();
      gl.bindBuffer(kind, made);
      gl.bufferData(kind, values, gl.STATIC_DRAW);
      return made;
    };
    const loaded = ({ points, triangles, seams }) => ({
      places: buffer(gl.ARRAY_BUFFER, new Float32Array(points)),
      away: buffer(gl.ARRAY_BUFFER, normals(points, triangles)),
      triangles: buffer(gl.ELEMENT_ARRAY_BUFFER, new Uint16Array(triangles)),
      seams: buffer(gl.ELEMENT_ARRAY_BUFFER, new Uint16Array(seams)),
      counts: [triangles.length, seams.length],
    });
    const [stand, cloth] = [loaded(data.stand), loaded(model)];
    const uniform = (name) => gl.getUniformLocation(program, name);
    const attribute = (name, from) => {
      const at = gl.getAttribLocation(program, name);
      gl.bindBuffer(gl.ARRAY_BUFFER, from);
      gl.enableVertexAttribArray(at);
      gl.vertexAttribPointer(at, 3, gl.FLOAT, false, 0, 0);
    };
    const draw = (of, what, colour, shaded) => {
      attribute("place", of.places);
      attribute("away", of.away);
      gl.uniform3fv(uniform("colour"), colour);
      gl.uniform1f(uniform("shaded"), shaded);
      gl.uniform1f(uniform("nearer"), shaded ? 0 : 0.004);
      gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, shaded ? of.triangles : of.seams);
      gl.drawElements(what, of.counts[shaded ? 0 : 1], gl.UNSIGNED_SHORT, 0);
    };
    return (degrees) => {
      const half = 0.5 * (data.top - data.bottom);
      const wide = (half * canvas.width) / canvas.height;
      const turn = (degrees * Math.PI) / 180;
      gl.viewport(0, 0, canvas.width, canvas.height);
      gl.clearColor(1, 1, 1, 1);
      gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
      gl.uniform2f(uniform("turn"), Math.cos(turn), Math.sin(turn));
      gl.uniform4f(uniform("frame"), wide, 0.5 * (data.top + data.bottom), half, data.middle);
      draw(stand, gl.TRIANGLES, [0.62, 0.52, 0.45], 1);
      draw(cloth, gl.TRIANGLES, [0.9, 0.89, 0.84], 1);
      draw(cloth, gl.LINES, [0.22, 0.22, 0.27], 0);
    };
  };

  const canvases = [...document.querySelectorAll("canvas")];
  const painters = canvases.map((canvas, place) => painter(canvas, data.cloths[place]));
  if (painters.some((paint) => paint === null)) {
    document.getElementById("turning").hidden = true;
    return;
  }
  const show = () => painters.forEach((paint) => paint(Number(slider.value)));
  slider.addEventListener("input", show);
  for (const button of document.querySelectorAll("button[data-turn]")) {
    button.addEventListener("click", () => {
      slider.value = button.dataset.turn;
      show();
    });
  }
  for (const canvas of canvases) {
    let from = null;
    canvas.addEventListener("pointerdown", (event) => {
      from = { x: event.clientX, turn: Number(slider.value) };
      canvas.setPointerCapture(event.pointerId);
    });
    canvas.addEventListener("pointermove", (event) => {
      if (from === null) return;
      slider.value = (((from.turn - (event.clientX - from.x) * 0.6) % 360) + 360) % 360;
      show();
    });
    for (const end of ["pointerup", "pointercancel"]) {
      canvas.addEventListener(end, () => {
        from = null;
      });
    }
  }
  show();
})();
