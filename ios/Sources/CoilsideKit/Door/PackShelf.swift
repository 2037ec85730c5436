import CoilsideCore
import Foundation

/// Packs out of the person's folder: the files as they lie there. What they mean is the core's to say.
public enum PackShelf {
    /// Of a file no more than this is read, bytes: one more than the core takes, so that it sees that it is too much.
    static let bytesMost = 2_000_001

    /// Every folder in `packs` that holds a pack's files, by name. A file that cannot be read is left out, and the core says what is missing.
    public static func all(in packs: URL) -> [PackFolder] {
        let files = FileManager.default
        let names = ((try? files.contentsOfDirectory(atPath: packs.path)) ?? []).sorted()
        return names.compactMap { name in
            let folder = packs.appendingPathComponent(name, isDirectory: true)
            let inside = ((try? files.contentsOfDirectory(atPath: folder.path)) ?? []).sorted()
            let found = inside.filter { $0 == "pack.toml" || $0.hasSuffix(".ftl") }.compactMap { file -> PackFile? in
                guard let handle = try? FileHandle(forReadingFrom: folder.appendingPathComponent(file)) else { return nil }
                defer { try? handle.close() }
                guard let bytes = try? handle.read(upToCount: bytesMost) else { return nil }
                return PackFile(name: file, bytes: bytes)
            }
            return found.isEmpty ? nil : PackFolder(from: name, files: found)
        }
    }
}
