"""A wire that is cut at random: a TCP proxy that lets some bytes of a connection through and then breaks it off."""

import random
import socket
import threading


class CuttingWire:
    """Carries connections to a port of this machine; two of three are cut while sending, and of some the answer is lost."""

    def __init__(self, port: int, seed: int, bytes_most: int):
        self.cuts = 0
        self.connections = 0
        self._draw = random.Random(seed)
        self._to = port
        self._bytes_most = bytes_most
        self._server = socket.create_server(("127.0.0.1", 0))
        self.port = self._server.getsockname()[1]
        threading.Thread(target=self._accept, daemon=True).start()

    def close(self):
        self._server.close()

    def _accept(self):
        while True:
            try:
                near, _ = self._server.accept()
            except OSError:
                return
            self.connections += 1
            try:
                far = socket.create_connection(("127.0.0.1", self._to))
            except OSError:
                near.close()
                continue
            draw = self._draw.random
            up = float("inf") if draw() < 1 / 3 else draw() * self._bytes_most
            # An answer is lost as a whole: Python's HTTP takes half of its headers for all of them.
            down = 0 if draw() < 1 / 8 else float("inf")
            for from_, to, left in ((near, far, up), (far, near, down)):
                threading.Thread(target=self._carry, args=(from_, to, left, (near, far)), daemon=True).start()

    def _carry(self, from_, to, left, both):
        try:
            while data := from_.recv(65536):
                to.sendall(data[: int(min(left, len(data)))])
                left -= len(data)
                if left < 0:
                    self.cuts += 1
                    break
        except OSError:
            pass
        for side in both:
            try:
                side.shutdown(socket.SHUT_RDWR)
            except OSError:
                pass
