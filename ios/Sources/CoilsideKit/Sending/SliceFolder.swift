import CoilsideCore
import Foundation

/// Slices of files as files of their own: what goes on while the app sleeps can only be a whole file.
public struct SliceFolder: Sendable {
    private let folder: URL
    /// How much is copied at once, bytes.
    private static let atOnce = 1 << 20

    /// Slices in a folder that is there.
    public init(_ folder: URL) { self.folder = folder }

    /// Where the slice of a request lies.
    public func file(of request: String) -> URL {
        let plain = request.map { $0.isLetter || $0.isNumber || $0 == "-" ? $0 : "_" }
        return folder.appendingPathComponent(String(plain) + ".slice")
    }

    /// Copies a slice out. A file that is shorter than it was said to be is an error: nothing half is sent.
    public func copy(_ slice: FileSlice, of request: String) throws -> URL {
        let to = file(of: request)
        let from = try FileHandle(forReadingFrom: URL(fileURLWithPath: slice.path))
        defer { try? from.close() }
        guard FileManager.default.createFile(atPath: to.path, contents: nil) else { throw CocoaError(.fileWriteUnknown) }
        let into = try FileHandle(forWritingTo: to)
        defer { try? into.close() }
        try from.seek(toOffset: slice.from)
        var left = slice.length
        while left > 0 {
            let part = try from.read(upToCount: Int(min(left, UInt64(Self.atOnce)))) ?? Data()
            guard !part.isEmpty else { throw CocoaError(.fileReadCorruptFile) }
            try into.write(contentsOf: part)
            left -= UInt64(part.count)
        }
        return to
    }

    /// The request is answered.
    public func forget(_ request: String) { try? FileManager.default.removeItem(at: file(of: request)) }

    /// Removes what belongs to none of these requests.
    public func sweep(except requests: Set<String>) {
        let kept = Set(requests.map { file(of: $0).lastPathComponent })
        let files = FileManager.default
        for each in (try? files.contentsOfDirectory(at: folder, includingPropertiesForKeys: nil)) ?? []
        where !kept.contains(each.lastPathComponent) {
            try? files.removeItem(at: each)
        }
    }
}
