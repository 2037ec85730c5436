import Foundation
import Glibc

/// A file system in memory that is really full when it is full. Mounted where only this run sees it; needs to be root, as the tool-chain does.
final class SmallDisk {
    let folder: URL
    private var filling: URL { folder.appendingPathComponent("filling") }

    init(bytes: Int) throws {
        folder = URL(fileURLWithPath: NSTemporaryDirectory()).appendingPathComponent("disk-" + UUID().uuidString, isDirectory: true)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        guard mount("tmpfs", folder.path, "tmpfs", 0, "size=\(bytes)") == 0 else { throw IOFault(errno) }
    }

    deinit { umount2(folder.path, Int32(MNT_DETACH)) }

    /// Writes until not one byte more fits.
    func fill() throws {
        let file = open(filling.path, O_WRONLY | O_CREAT, 0o600)
        defer { close(file) }
        let zeros = [UInt8](repeating: 0, count: 4096)
        for step in [4096, 1] { while write(file, zeros, step) == step {} }
        guard errno == ENOSPC else { throw IOFault(errno) }
    }

    func makeRoom() throws { try FileManager.default.removeItem(at: filling) }
}

struct IOFault: Error {
    let why: String
    init(_ code: Int32) { why = String(cString: strerror(code)) }
}
