import Foundation

/// Real JPEG files: a picture of 16 times 12 points, and as many bytes as wanted in comments, so that every one has other bytes.
enum Picture {
    private static let small = Data(
        base64Encoded:
            "/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDABQODxIPDRQSEBIXFRQYHjIhHhwcHj0sLiQySUBMS0dARkVQWnNiUFVtVkVGZIhlbXd7gYKBTmCNl4x9lnN+gXz/wAALCAAMABABAREA/8QAFQABAQAAAAAAAAAAAAAAAAAABQH/xAAZEAADAAMAAAAAAAAAAAAAAAAABCECAzH/2gAIAQEAAD8AEVU5BlVTkIrrxkGldeMh/9k="
    )!
    /// ITU-T T.81, B.2.4.5: a comment's length is told in two bytes, themselves included.
    private static let commentBytesMost = 65_533

    static func of(_ name: String, bytes: Int = 40) -> Data {
        var filling = Data("\(name) ".utf8)
        var state = UInt64(truncatingIfNeeded: filling.reduce(7) { $0 &* 31 &+ Int($1) })
        while filling.count < bytes {
            state = state &* 6_364_136_223_846_793_005 &+ 1_442_695_040_888_963_407
            filling.append(UInt8(truncatingIfNeeded: state >> 33))
        }
        var whole = small.prefix(2)
        for at in stride(from: 0, to: filling.count, by: commentBytesMost) {
            let comment = filling[at..<min(at + commentBytesMost, filling.count)]
            let told = comment.count + 2
            whole += Data([0xff, 0xfe, UInt8(told >> 8), UInt8(told & 0xff)]) + comment
        }
        return whole + small.dropFirst(2)
    }
}
