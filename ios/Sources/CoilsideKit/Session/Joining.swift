import CoilsideCore
import Foundation

extension Companion {
    /// The screen on which a device joins an office.
    public static let joinPlace = "join"

    /// Takes the link of an office, read from its code, into the fields of the screen of joining. The person still presses the button: who
    /// scans has not agreed yet. Anything that is no such link changes nothing.
    @discardableResult
    public func scanned(_ text: String, deviceName: String) -> Bool {
        let text = text.trimmingCharacters(in: .whitespacesAndNewlines)
        guard Self.isJoinLink(text) else { return false }
        session.act(.draft(field: "join-code", text: text))
        session.act(.draft(field: "join-name", text: deviceName))
        return true
    }

    /// Whether a text looks like an office's link to join: what stands in it the core judges.
    public static func isJoinLink(_ text: String) -> Bool {
        guard let url = URL(string: text), let scheme = url.scheme?.lowercased(), ["http", "https"].contains(scheme) else { return false }
        return url.path.hasSuffix("/join") && !(url.fragment ?? "").isEmpty
    }
}
