import Foundation

#if canImport(FoundationNetworking)
    import FoundationNetworking
#endif

/// The project's own office as a process, which can be killed and started again where it was.
final class Office: @unchecked Sendable {
    let folder: URL
    private(set) var port: UInt16 = 0
    private var process: Process?

    init(in folder: URL) throws {
        self.folder = folder.appendingPathComponent("office", isDirectory: true)
        try start()
    }

    deinit { kill9() }

    func start() throws {
        let process = Process()
        process.executableURL = Paths.program
        process.arguments = ["office", "--folder", folder.path, "--port", String(port)]
        let out = Pipe()
        process.standardOutput = out
        process.standardError = FileHandle.nullDevice
        try process.run()
        var told = ""
        while true {
            let more = out.fileHandleForReading.availableData
            guard !more.isEmpty else { throw Stuck(description: "the office tells no address: \(told)") }
            told += String(decoding: more, as: UTF8.self)
            guard let at = told.range(of: "http://127.0.0.1:") else { continue }
            let digits = told[at.upperBound...].prefix { $0.isNumber }
            guard at.upperBound < told.endIndex, digits.endIndex < told.endIndex, let found = UInt16(digits) else { continue }
            port = found
            self.process = process
            return
        }
    }

    func kill9() {
        guard let process else { return }
        kill(process.processIdentifier, SIGKILL)
        process.waitUntilExit()
        self.process = nil
    }

    /// A code to join, as the office's page shows it to whoever has signed in.
    func newCode() async throws -> String {
        let link = try coilside(["office", "--folder", folder.path, "--new-link"]).text.split(separator: "\n").last.map(String.init) ?? ""
        let page = URLSession(configuration: .ephemeral, delegate: NoRedirects(), delegateQueue: nil)
        defer { page.invalidateAndCancel() }
        let office = "http://127.0.0.1:\(port)"
        let (_, entered) = try await page.data(from: try url(office + link))
        let cookie = (entered as? HTTPURLResponse)?.value(forHTTPHeaderField: "Set-Cookie") ?? ""
        var asked = URLRequest(url: try url(office + "/devices/join"))
        asked.httpMethod = "POST"
        asked.setValue(String(cookie.prefix { $0 != ";" }), forHTTPHeaderField: "Cookie")
        asked.setValue("application/x-www-form-urlencoded", forHTTPHeaderField: "Content-Type")
        asked.httpBody = Data("name=Van+2".utf8)
        let (bytes, _) = try await page.data(for: asked)
        let text = String(decoding: bytes, as: UTF8.self)
        guard let at = text.range(of: "/join#") else { throw Stuck(description: "no code on the page: \(text)") }
        return String(text[at.upperBound...].prefix(9))
    }

    private func url(_ text: String) throws -> URL {
        guard let url = URL(string: text) else { throw Stuck(description: "no address: \(text)") }
        return url
    }

    /// The original of a photograph on the office's disk.
    func photo(_ digest: String) -> Data? {
        FileManager.default.contents(atPath: folder.appendingPathComponent("photos/\(digest.prefix(2))/\(digest)").path)
    }

    /// What the office's database has.
    func rows(_ query: String) throws -> [[String]] { try Database.rows(folder.appendingPathComponent("office.db").path, query) }
}

/// Whoever signs in is sent on; the way in is told beside that.
private final class NoRedirects: NSObject, URLSessionTaskDelegate {
    func urlSession(
        _ session: URLSession, task: URLSessionTask, willPerformHTTPRedirection response: HTTPURLResponse, newRequest: URLRequest,
        completionHandler: @escaping @Sendable (URLRequest?) -> Void
    ) {
        completionHandler(nil)
    }
}
