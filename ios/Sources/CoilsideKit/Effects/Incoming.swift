import Foundation

/// Why a photograph's bytes could not be put down. Nothing was changed.
public enum IncomingProblem: Error, Sendable, Equatable {
    /// Larger than the core takes.
    case tooLarge
    /// The disk is full.
    case full
    /// Anything else, in the system's words.
    case failed(String)

    var key: String? {
        switch self {
        case .tooLarge: "shell-problem-too-large"
        case .full: "shell-phone-full"
        case .failed: nil
        }
    }

    var detail: String { if case .failed(let detail) = self { detail } else { "" } }
}

/// A photograph's original bytes: written beside their final name, synced, then renamed. Nothing half is ever found under the final name.
public enum Incoming {
    /// The largest photograph, bytes.
    public static let bytesMost = 60_000_000

    /// Puts bytes down under a path.
    public static func put(_ bytes: Data, at path: String) throws {
        guard bytes.count <= bytesMost else { throw IncomingProblem.tooLarge }
        let part = path + "." + UUID().uuidString + ".part"
        do {
            try write(bytes, to: part)
            guard rename(part, path) == 0 else { throw problem(errno) }
            try syncFolder(of: path)
        } catch {
            unlink(part)
            throw error
        }
    }

    /// Removes what an interrupted hand-over left beside the final names.
    public static func sweep(_ folder: URL) {
        let names = (try? FileManager.default.contentsOfDirectory(atPath: folder.path)) ?? []
        for name in names where name.hasSuffix(".part") {
            unlink(folder.appendingPathComponent(name).path)
        }
    }

    private static func write(_ bytes: Data, to path: String) throws {
        let file = open(path, O_WRONLY | O_CREAT | O_TRUNC, 0o600)
        guard file >= 0 else { throw problem(errno) }
        defer { close(file) }
        try bytes.withUnsafeBytes { all in
            var at = 0
            while at < all.count {
                let count = systemWrite(file, all.baseAddress?.advanced(by: at), all.count - at)
                if count < 0, errno == EINTR { continue }
                guard count > 0 else { throw problem(errno) }
                at += count
            }
        }
        guard toDisk(file) == 0 else { throw problem(errno) }
    }

    private static func syncFolder(of path: String) throws {
        let folder = open((path as NSString).deletingLastPathComponent, O_RDONLY)
        guard folder >= 0 else { throw problem(errno) }
        defer { close(folder) }
        guard fsync(folder) == 0 else { throw problem(errno) }
    }

    /// On Apple's systems only F_FULLFSYNC reaches the disk itself.
    private static func toDisk(_ file: Int32) -> Int32 {
        #if os(Linux)
            fsync(file)
        #else
            fcntl(file, F_FULLFSYNC) == -1 ? fsync(file) : 0
        #endif
    }

    private static func systemWrite(_ file: Int32, _ from: UnsafeRawPointer?, _ count: Int) -> Int {
        #if os(Linux)
            Glibc.write(file, from, count)
        #else
            Darwin.write(file, from, count)
        #endif
    }

    private static func problem(_ code: Int32) -> IncomingProblem {
        code == ENOSPC || code == EDQUOT ? .full : .failed(String(cString: strerror(code)))
    }
}

#if os(Linux)
    import Glibc
#else
    import Darwin
#endif
