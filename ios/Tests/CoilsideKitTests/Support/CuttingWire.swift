import Foundation
import Glibc

/// A wire that is cut at random: a TCP proxy that lets some bytes of a connection through and then breaks it off, or loses the answer.
final class CuttingWire: @unchecked Sendable {
    let port: UInt16
    private let listening: Int32
    private let lock = NSLock()
    private var draw: UInt64
    private var to: UInt16
    private var counts = (cuts: 0, connections: 0)
    private var bytesMost: Int?

    var cuts: Int { lock.withLock { counts.cuts } }
    var connections: Int { lock.withLock { counts.connections } }

    init(to office: UInt16, seed: UInt64) throws {
        to = office
        draw = seed
        let waiting = socket(AF_INET, Int32(SOCK_STREAM.rawValue), 0)
        var address = Self.local(0)
        var length = socklen_t(MemoryLayout<sockaddr_in>.size)
        let told = withUnsafeMutablePointer(to: &address) {
            $0.withMemoryRebound(to: sockaddr.self, capacity: 1) { bind(waiting, $0, length) == 0 && getsockname(waiting, $0, &length) == 0 }
        }
        guard told, listen(waiting, 64) == 0 else { throw IOFault(errno) }
        listening = waiting
        port = UInt16(bigEndian: address.sin_port)
        Thread.detachNewThread { [self] in accept() }
    }

    /// From now on connections are cut, each behind no more than so many bytes; none: no more.
    func cut(behind bytes: Int?) { lock.withLock { bytesMost = bytes } }

    func close() {
        shutdown(listening, Int32(SHUT_RDWR))
        Glibc.close(listening)
    }

    /// 0…1 (Knuth's MMIX generator).
    private func random() -> Double {
        lock.withLock {
            draw = draw &* 6_364_136_223_846_793_005 &+ 1_442_695_040_888_963_407
            return Double(draw >> 11) / Double(1 << 53)
        }
    }

    private func accept() {
        while case let near = Glibc.accept(listening, nil, nil), near >= 0 {
            let (most, office) = lock.withLock { () -> (Int?, UInt16) in
                counts.connections += 1
                return (bytesMost, to)
            }
            let far = socket(AF_INET, Int32(SOCK_STREAM.rawValue), 0)
            var address = Self.local(office)
            let joined = withUnsafePointer(to: &address) {
                $0.withMemoryRebound(to: sockaddr.self, capacity: 1) { connect(far, $0, socklen_t(MemoryLayout<sockaddr_in>.size)) }
            }
            guard joined == 0 else {
                Glibc.close(near)
                Glibc.close(far)
                continue
            }
            // Two of three are cut while sending; of some the answer is lost.
            let up = most.flatMap { random() < 1 / 3 ? nil : Int(random() * Double($0)) }
            // An answer is lost as a whole: this machine's Foundation ends the process over half of a head (swift-corelibs-foundation,
            // 'Transfer completed, but there's no response').
            let down = most.flatMap { _ in random() < 1 / 8 ? 0 : nil }
            Ways(near: near, far: far, up: up, down: down) { [self] in lock.withLock { counts.cuts += 1 } }.run()
        }
    }

    private static func local(_ port: UInt16) -> sockaddr_in {
        var address = sockaddr_in()
        address.sin_family = sa_family_t(AF_INET)
        address.sin_port = port.bigEndian
        address.sin_addr.s_addr = inet_addr("127.0.0.1")
        return address
    }
}

/// Both ways of one connection. The sockets are closed when both have ended.
private final class Ways: @unchecked Sendable {
    private let near: Int32, far: Int32
    private let up: Int?, down: Int?
    private let cut: @Sendable () -> Void

    init(near: Int32, far: Int32, up: Int?, down: Int?, cut: @escaping @Sendable () -> Void) {
        (self.near, self.far, self.up, self.down, self.cut) = (near, far, up, down, cut)
    }

    deinit {
        close(near)
        close(far)
    }

    func run() {
        Thread.detachNewThread { [self] in carry(from: near, to: far, limit: up) }
        Thread.detachNewThread { [self] in carry(from: far, to: near, limit: down) }
    }

    private func carry(from: Int32, to: Int32, limit: Int?) {
        var left = limit ?? .max
        var buffer = [UInt8](repeating: 0, count: 1 << 16)
        while case let count = recv(from, &buffer, buffer.count, 0), count > 0 {
            let fits = min(count, left)
            guard send(to, buffer, fits, Int32(MSG_NOSIGNAL)) == fits else { break }
            left -= count
            if left < 0 {
                cut()
                break
            }
        }
        for side in [near, far] { shutdown(side, Int32(SHUT_RDWR)) }
    }
}
