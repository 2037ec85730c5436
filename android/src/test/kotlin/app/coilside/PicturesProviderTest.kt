package app.coilside

import android.net.Uri
import android.provider.OpenableColumns
import java.io.File
import java.io.FileNotFoundException
import org.junit.Assert.assertArrayEquals
import org.junit.Assert.assertEquals
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.annotation.Config

/** Other apps reach the one file that they were given, and no other. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], application = android.app.Application::class)
class PicturesProviderTest {
    private val app get() = RuntimeEnvironment.getApplication()
    private val resolver get() = app.contentResolver

    @Test
    fun `a camera writes its picture to the address that it was given, to the byte`() {
        val file = File(Folders.camera(app), "visit_1_0.jpg")
        val picture = ByteArray(70_000) { it.toByte() }
        checkNotNull(resolver.openOutputStream(Folders.address(file))).use { it.write(picture) }
        assertArrayEquals(picture, file.readBytes())
        assertEquals("image/jpeg", resolver.getType(Folders.address(file)))
    }

    @Test
    fun `a shorter picture that is written over a longer one leaves nothing of it`() {
        val file = File(Folders.camera(app), "visit_1_0.jpg").apply { writeBytes(ByteArray(500)) }
        checkNotNull(resolver.openOutputStream(Folders.address(file), "rwt")).use { it.write(ByteArray(20)) }
        assertEquals(20, file.length())
    }

    @Test
    fun `whoever receives the summary learns its name and length`() {
        val file = File(Folders.shared(app), "summary.html").apply { writeText("<p>done</p>") }
        resolver.query(Folders.address(file), null, null, null, null).use { rows ->
            checkNotNull(rows)
            assertTrue(rows.moveToFirst())
            assertEquals("summary.html", rows.getString(rows.getColumnIndexOrThrow(OpenableColumns.DISPLAY_NAME)))
            assertEquals(11, rows.getLong(rows.getColumnIndexOrThrow(OpenableColumns.SIZE)))
        }
        assertEquals("text/html", resolver.getType(Folders.address(file)))
    }

    @Test
    fun `no address leads out of the two folders`() {
        File(app.noBackupFilesDir, "secret.jpg").writeText("secret")
        for (path in listOf("camera/..%2Fsecret.jpg", "camera/../secret.jpg", "store/field.db", "camera/a/b.jpg", "camera", "camera/.jpg", "camera/a.jpg%00")) {
            val address = Uri.parse("content://${Folders.AUTHORITY}/$path")
            assertThrows(path, FileNotFoundException::class.java) { resolver.openInputStream(address) }
        }
    }

    @Test
    fun `nothing can be put in, changed or taken away`() {
        val file = File(Folders.camera(app), "visit_1_0.jpg").apply { writeText("picture") }
        val address = Folders.address(file)
        assertEquals(0, resolver.delete(address, null, null))
        assertEquals(0, resolver.update(address, android.content.ContentValues(), null, null))
        assertEquals(null, resolver.insert(address, android.content.ContentValues()))
        assertEquals("picture", file.readText())
    }
}
