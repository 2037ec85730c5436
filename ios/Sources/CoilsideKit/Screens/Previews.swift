import Foundation
import Observation

/// Where the small pictures of photographs lie. Asked for once; one that is not there yet is looked for again after every answer of the core.
@MainActor @Observable
public final class Previews {
    private var found: [String: URL] = [:]
    @ObservationIgnored private var asked: [String: Int] = [:]
    @ObservationIgnored private let door: DoorQueue

    init(door: DoorQueue) { self.door = door }

    /// The file of a photograph's small picture; none as long as there is none. `turn` tells answers of the core apart.
    public func file(_ digest: String, turn: Int) -> URL? {
        if let file = found[digest] { return file }
        if asked[digest] != turn {
            asked[digest] = turn
            Task {
                let path = try? await door.call { door, _ in door.previewPath(digest: digest) }
                if let path, FileManager.default.fileExists(atPath: path) { found[digest] = URL(fileURLWithPath: path) }
            }
        }
        return nil
    }
}
