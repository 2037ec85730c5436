// Carries connections on, between network namespaces: a socket's file is reached from each.
//
//     node relay.mjs FROM TO     each HOST:PORT or the path of a socket

import net from "node:net";

const [from = "", to = ""] = process.argv.slice(2);
const place = (/** @type {string} */ text) => {
  if (text.startsWith("/")) return { path: text };
  const [host, port] = text.split(":");
  return { host, port: Number(port) };
};
net
  .createServer((near) => {
    const far = net.connect(place(to));
    const end = () => (near.destroy(), far.destroy());
    for (const side of [near, far]) side.on("error", end).on("close", end);
    near.pipe(far);
    far.pipe(near);
  })
  .listen(place(from), () => console.log("relay http://127.0.0.1:0"));
