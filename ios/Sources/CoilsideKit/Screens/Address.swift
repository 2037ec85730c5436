import Foundation

/// What a link of a screen leads to.
public enum Address: Sendable, Equatable {
    /// The owner's summary: to show, print and share.
    case summary
    /// A page or a call that the system opens.
    case outside(URL)
    /// Nothing that is followed: the address is shown as words.
    case words(String)
    /// Nothing on this device.
    case hidden

    /// Only addresses that open a page or call a person are followed. The summary as paper is left out: the system prints the page, also
    /// into a file.
    public static func of(_ to: String) -> Address {
        switch to {
        case "summary.html": return .summary
        case "summary.pdf": return .hidden
        default:
            let followed = ["http", "https", "tel", "sms", "mailto", "geo"]
            guard let url = URL(string: to), let scheme = url.scheme?.lowercased(), followed.contains(scheme) else { return .words(to) }
            return .outside(scheme == "geo" ? map(to) ?? url : url)
        }
    }

    /// Apple's systems know no `geo:`; their maps take the same place by an address of the web.
    private static func map(_ geo: String) -> URL? {
        let place = geo.dropFirst("geo:".count).prefix { $0 != "?" && $0 != ";" }
        return URL(string: "https://maps.apple.com/?q=\(place)")
    }
}
