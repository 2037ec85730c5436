import CoilsideCore
import Foundation

extension Companion {
    /// Writes the owner's summary of the sealed visit that is open into a file of its own, to show, print and share.
    public func summary() async throws -> URL {
        let page = try await door.call { door, _ in try door.summaryPage(office: nil) }
        // A folder for each, so that the file that is shared has a plain name and an earlier one that is still read stays whole.
        let folder = home.handover.appendingPathComponent(UUID().uuidString, isDirectory: true)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        let file = folder.appendingPathComponent("summary.html")
        try Data(page.utf8).write(to: file, options: .atomic)
        return file
    }

    /// Forgets what was handed over before this start.
    public func sweepHandover() {
        let files = FileManager.default
        for each in (try? files.contentsOfDirectory(at: home.handover, includingPropertiesForKeys: nil)) ?? [] {
            try? files.removeItem(at: each)
        }
    }
}
