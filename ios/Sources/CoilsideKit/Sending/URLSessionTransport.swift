import CoilsideCore
import Foundation

#if canImport(FoundationNetworking)
    import FoundationNetworking
#endif

/// Carries requests over URLSession: what is small over an ordinary session, slices of photographs over one that goes on while the app
/// sleeps or is gone.
public final class URLSessionTransport: NSObject, Transport, @unchecked Sendable {
    /// How long nothing may come or go, seconds.
    static let idleMost: TimeInterval = 30
    /// How long a small request may take, seconds; the core gives an unanswered one up a little later.
    static let wholeMost: TimeInterval = 80
    /// How long a slice may take while the app sleeps, seconds. Where the core has given it up meanwhile it is begun anew, and this one ends.
    static let sleepingMost: TimeInterval = 3600
    /// The most that is read of an answer, bytes.
    static let answerBytesMost = 1_000_000

    private let slices: SliceFolder
    private let lock = NSLock()
    private var bodies: [URLSessionTask: Data] = [:]
    private var heard: (@Sendable (Answer) -> Void)?
    /// What came before anybody listened: answers to requests of an earlier process.
    private var early: [Answer] = []
    private var isEnded = false
    /// All of them were heard before anybody asked.
    private var isThrough = false
    private var slept: (@Sendable () -> Void)?
    private let small: URLSession
    private let large: URLSession

    /// `background` names the session that the system keeps for this app; without a name slices go over an ordinary one too.
    public init(slices folder: URL, background: String?, name: String) {
        slices = SliceFolder(folder)
        let part = Delegate()
        small = URLSession(configuration: Self.ordinary(name), delegate: part, delegateQueue: nil)
        large = URLSession(configuration: Self.sleeping(background, name), delegate: part, delegateQueue: nil)
        super.init()
        part.of = self
    }

    public func listen(_ heard: @escaping @Sendable (Answer) -> Void) {
        let early = lock.withLock { () -> [Answer] in
            self.heard = heard
            defer { self.early = [] }
            return self.early
        }
        early.forEach(heard)
        let known = slices
        large.getAllTasks { tasks in known.sweep(except: Set(tasks.compactMap(\.taskDescription))) }
    }

    public func carry(_ request: Sending) {
        guard let origin = request.origin, let url = URL(string: origin + request.path) else {
            return tell(.none(request.id, "this device has no office"))
        }
        var asked = URLRequest(url: url)
        asked.httpMethod = request.method
        for header in request.headers { asked.setValue(header.value, forHTTPHeaderField: header.name) }
        guard let slice = request.file else {
            asked.httpBody = request.body.isEmpty ? nil : request.body
            if let task = made({ small.dataTask(with: asked) }) { begin(task, request.id) }
            return
        }
        do {
            let file = try slices.copy(slice, of: request.id)
            asked.setValue(String(slice.length), forHTTPHeaderField: "Content-Length")
            #if os(Linux)
                // Foundation reads a body's file beside the transfer there, and ends the process where the transfer breaks off meanwhile.
                let bytes = try Data(contentsOf: file)
                let task = made { large.uploadTask(with: asked, from: bytes) }
            #else
                let task = made { large.uploadTask(with: asked, fromFile: file) }
            #endif
            guard let task else { return }
            // The core has one slice out at a time: it gave up whatever else is still under way.
            large.getAllTasks { [self] tasks in
                for other in tasks where other.taskIdentifier != task.taskIdentifier { other.cancel() }
                begin(task, request.id)
            }
        } catch {
            slices.forget(request.id)
            tell(.none(request.id, "\(error)"))
        }
    }

    /// Ends everything: no answer is heard any more.
    public func end() {
        lock.withLock { isEnded = true }
        small.invalidateAndCancel()
        large.invalidateAndCancel()
    }

    /// The system has woken the app because slices went on in its sleep. `done` is called when all of them were heard.
    public func woken(_ done: @escaping @Sendable () -> Void) {
        let through = lock.withLock { () -> Bool in
            if !isThrough { slept = done }
            defer { isThrough = false }
            return isThrough
        }
        if through { done() }
    }

    /// A task of a session that has not ended: the system ends the process over any other.
    private func made<Task: URLSessionTask>(_ task: () -> Task) -> Task? { lock.withLock { isEnded ? nil : task() } }

    private func begin(_ task: URLSessionTask, _ id: String) {
        task.taskDescription = id
        task.resume()
    }

    private static func ordinary(_ name: String) -> URLSessionConfiguration {
        let how = URLSessionConfiguration.ephemeral
        how.timeoutIntervalForRequest = idleMost
        how.timeoutIntervalForResource = wholeMost
        return bare(how, name)
    }

    private static func sleeping(_ background: String?, _ name: String) -> URLSessionConfiguration {
        #if os(Linux)
            return ordinary(name)
        #else
            guard let background else { return ordinary(name) }
            let how = URLSessionConfiguration.background(withIdentifier: background)
            how.timeoutIntervalForResource = sleepingMost
            how.isDiscretionary = false
            how.sessionSendsLaunchEvents = true
            return bare(how, name)
        #endif
    }

    /// No cookies, no store: an answer is the office's own word of this moment.
    private static func bare(_ how: URLSessionConfiguration, _ name: String) -> URLSessionConfiguration {
        how.httpShouldSetCookies = false
        how.httpCookieStorage = nil
        how.urlCache = nil
        how.requestCachePolicy = .reloadIgnoringLocalCacheData
        how.httpAdditionalHeaders = ["User-Agent": name]
        return how
    }

    fileprivate func came(_ data: Data, for task: URLSessionTask) {
        let tooMuch = lock.withLock {
            bodies[task, default: Data()].append(data)
            return bodies[task, default: Data()].count > Self.answerBytesMost
        }
        if tooMuch { task.cancel() }
    }

    fileprivate func ended(_ task: URLSessionTask, _ error: (any Error)?) {
        let body = lock.withLock { bodies.removeValue(forKey: task) } ?? Data()
        guard let id = task.taskDescription else { return }
        slices.forget(id)
        guard error == nil, let response = task.response as? HTTPURLResponse else {
            return tell(.none(id, error.map { "\($0)" } ?? "no answer"))
        }
        let headers = response.allHeaderFields.compactMap { name, value -> Header? in
            guard let name = name as? String, let value = value as? String else { return nil }
            return Header(name: name, value: value)
        }
        tell(Answer(id: id, status: UInt16(clamping: response.statusCode), headers: headers, body: body))
    }

    private func tell(_ answer: Answer) {
        let heard = lock.withLock { () -> (@Sendable (Answer) -> Void)? in
            if self.heard == nil { early.append(answer) }
            return self.heard
        }
        heard?(answer)
    }

    fileprivate func allHeard() {
        let done = lock.withLock { () -> (@Sendable () -> Void)? in
            defer { slept = nil }
            isThrough = slept == nil
            return slept
        }
        done?()
    }
}

/// Hears the sessions; apart from the transport, which a session would otherwise hold for ever.
private final class Delegate: NSObject, URLSessionDataDelegate, @unchecked Sendable {
    weak var of: URLSessionTransport?

    func urlSession(_ session: URLSession, dataTask: URLSessionDataTask, didReceive data: Data) { of?.came(data, for: dataTask) }

    func urlSession(_ session: URLSession, task: URLSessionTask, didCompleteWithError error: (any Error)?) { of?.ended(task, error) }

    /// An office does not send its devices elsewhere: whoever does is not the office.
    func urlSession(
        _ session: URLSession, task: URLSessionTask, willPerformHTTPRedirection response: HTTPURLResponse, newRequest: URLRequest,
        completionHandler: @escaping @Sendable (URLRequest?) -> Void
    ) {
        completionHandler(nil)
    }

    #if !os(Linux)
        func urlSessionDidFinishEvents(forBackgroundURLSession session: URLSession) { of?.allHeard() }
    #endif
}
