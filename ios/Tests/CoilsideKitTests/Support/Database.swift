import Foundation
import Glibc

/// Reads a database with SQLite as it lies on this machine (its C interface).
enum Database {
    private nonisolated(unsafe) static let library = dlopen("libsqlite3.so.0", RTLD_NOW)

    private static func function<Signature>(_ name: String, _ type: Signature.Type) throws -> Signature {
        guard let library, let found = dlsym(library, name) else { throw Stuck(description: "no SQLite with \(name)") }
        return unsafeBitCast(found, to: type)
    }

    private static let readOnly: Int32 = 1
    private static let row: Int32 = 100

    /// The rows of a query, every value as text; write `hex(…)` for bytes.
    static func rows(_ file: String, _ query: String) throws -> [[String]] {
        typealias Handle = OpaquePointer
        let open = try function(
            "sqlite3_open_v2", (@convention(c) (UnsafePointer<CChar>, UnsafeMutablePointer<Handle?>, Int32, UnsafePointer<CChar>?) -> Int32).self)
        let close = try function("sqlite3_close_v2", (@convention(c) (Handle?) -> Int32).self)
        let prepare = try function(
            "sqlite3_prepare_v2",
            (@convention(c) (
                Handle?, UnsafePointer<CChar>, Int32, UnsafeMutablePointer<Handle?>, UnsafeMutablePointer<UnsafePointer<CChar>?>?
            ) -> Int32).self)
        let step = try function("sqlite3_step", (@convention(c) (Handle?) -> Int32).self)
        let columns = try function("sqlite3_column_count", (@convention(c) (Handle?) -> Int32).self)
        let text = try function("sqlite3_column_text", (@convention(c) (Handle?, Int32) -> UnsafePointer<UInt8>?).self)
        let finalize = try function("sqlite3_finalize", (@convention(c) (Handle?) -> Int32).self)
        var (database, statement): (Handle?, Handle?) = (nil, nil)
        guard open(file, &database, readOnly, nil) == 0 else { throw Stuck(description: "\(file) cannot be opened") }
        defer { _ = close(database) }
        guard prepare(database, query, -1, &statement, nil) == 0 else { throw Stuck(description: "no such query: \(query)") }
        defer { _ = finalize(statement) }
        var rows: [[String]] = []
        while step(statement) == row {
            rows.append((0..<columns(statement)).map { text(statement, $0).map { String(cString: $0) } ?? "" })
        }
        return rows
    }
}
